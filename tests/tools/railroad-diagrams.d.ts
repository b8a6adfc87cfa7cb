/** The part of railroad-diagrams 1.0.0 that is used; the package has no types of its own. */
declare module 'railroad-diagrams' {
  export interface Shape {
    toString(): string;
  }
  interface Railroad {
    Diagram(...items: Shape[]): { format(): Shape };
    Sequence(...items: Shape[]): Shape;
    Choice(normal: number, ...items: Shape[]): Shape;
    Optional(item: Shape): Shape;
    OneOrMore(item: Shape, separator?: Shape): Shape;
    ZeroOrMore(item: Shape, separator?: Shape): Shape;
    Terminal(text: string): Shape;
    NonTerminal(text: string): Shape;
    Skip(): Shape;
  }
  const railroad: Railroad;
  export default railroad;
}
