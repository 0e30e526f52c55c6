/** Closes a switch over a union: the compiler refuses it while a case is missing. */
export function assertNever(value: never): never {
  throw new Error(`unexpected value: ${JSON.stringify(value)}`);
}

/** States what must hold here; a failure is a bug, never a user's mistake. */
export function invariant(condition: unknown, what: string): asserts condition {
  if (!condition) throw new Error(`invariant broken: ${what}`);
}

/** The value, where an absent one would be a bug: `known(map.get(id), 'student')`. */
export function known<T>(value: T | undefined | null, what: string): T {
  invariant(value !== undefined && value !== null, `${what} is known`);
  return value;
}
