declare const brand: unique symbol;

/** A primitive that can't be mistaken for another of the same type, e.g. `Brand<number, 'Fret'>`. */
export type Brand<T, Name extends string> = T & { readonly [brand]: Name };
