/**
 * What a test reads, as a line offers it: an ellipsis for each value, so that the line is not read before somebody has
 * read the kit. A value that stood there would become a fact by being copied.
 */
export const TO_READ = {
  /** What toxic ammonia rests on. */
  toxic: 'pH …, TAN …, … C',
  /** What a filter that is not mature is watched by. */
  watch: 'pH …, TAN …, NO2 …, … C',
  /** Where nothing says what is to be tested. */
  usual: 'pH …, TAN …, NO2 …, NO3 …',
} as const;
