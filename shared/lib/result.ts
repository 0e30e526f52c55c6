/** What an operation that may be refused gives back; `throw` is kept for bugs. */
export type Result<T, E> = Success<T> | Failure<E>;
export interface Success<T> {
  readonly ok: true;
  readonly value: T;
}
export interface Failure<E> {
  readonly ok: false;
  readonly error: E;
}

/** `success(3)` is `{ ok: true, value: 3 }`. */
export function success<T>(value: T): Success<T> {
  return { ok: true, value };
}

/** `failure('class-closed')` is `{ ok: false, error: 'class-closed' }`. */
export function failure<E>(error: E): Failure<E> {
  return { ok: false, error };
}
