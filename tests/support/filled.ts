/** A line that an answer offers, with something in the place of each ellipsis: what a keeper reads or counts there. */
export function filled(line: string): string {
  return line
    .replace('pH …', 'pH 7.2')
    .replace('NO3 …', 'NO3 5')
    .replace('… C', '25 C')
    .replace(/(TAN|NO2|chlorine) …/g, '$1 0')
    .replace('GH …', 'GH 8')
    .replace('level … mm', 'level 41 mm')
    .replace('counted …', 'counted 12');
}
