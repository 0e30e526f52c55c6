declare const content: unique symbol;

/** JSON text of a `T` that we wrote ourselves, so that reading it back needs no check. */
export type Json<T> = string & { readonly [content]: T };

export function toJson<T>(value: T): Json<T> {
  return JSON.stringify(value) as Json<T>;
}

export function fromJson<T>(text: Json<T>): T {
  return JSON.parse(text) as T;
}

export function toJsonOrNull<T>(value: T | null): Json<T> | null {
  return value === null ? null : toJson(value);
}

export function fromJsonOrNull<T>(text: Json<T> | null): T | null {
  return text === null ? null : fromJson(text);
}
