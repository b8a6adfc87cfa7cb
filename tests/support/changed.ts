/** Lines as thumbs damage them. */
const SIGNS = [...' ,;:-"#0123456789abcdefgmnrstx½–“”\u00a0\tÄé♂%()/~?+.!*=@&£$€[]|_'];

/** The line with a sign or two put in, left out or exchanged; `random` gives shares of one. */
export function changed(line: string, random: () => number): string {
  let text = line;
  for (let times = 1 + Math.floor(random() * 2); times > 0; times -= 1) {
    const at = Math.floor(random() * (text.length + 1));
    const sign = SIGNS[Math.floor(random() * SIGNS.length)] ?? ' ';
    const how = random();
    text = text.slice(0, at) + (how < 2 / 3 ? sign : '') + text.slice(how < 1 / 3 ? at : at + 1);
  }
  return text;
}
