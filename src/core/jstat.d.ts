/** The few functions of jStat that are used, typed here because the package brings no types. */
declare module 'jstat' {
  interface Distribution {
    inv(p: number, ...parameters: number[]): number;
    cdf(x: number, ...parameters: number[]): number;
  }
  const jstat: {
    readonly studentt: Distribution;
    readonly chisquare: Distribution;
    readonly beta: Distribution;
    readonly normal: Distribution;
  };
  export default jstat;
}
