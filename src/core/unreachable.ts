/** Ends an exhaustive switch: a case that the types say cannot occur. Throws, since reaching it is a fault of ours. */
export function unreachable(value: never): never {
  throw new Error(`a case was left out for ${JSON.stringify(value)}`);
}
