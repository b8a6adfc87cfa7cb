/**
 * What a test reads, as a line offers it: an ellipsis for each value, so that the line is not read before somebody has
 * read the kit. A value that stood there would become a fact by being copied.
 */
export const TO_READ = {
  /** What toxic ammonia rests on. */
  toxic: 'pH …, TAN …, … C',
  /** What a filter that is not mature is watched by. */
  watch: 'pH …, TAN …, NO2 …, … C',
  /** One thing that stood outside the water that a species is kept in. */
  ph: 'pH …',
  temperature: '… C',
  gh: 'GH … dH',
  /** Where nothing says what is to be tested. */
  usual: 'pH …, TAN …, NO2 …, NO3 …',
} as const;
