/**
 * Works something out once for each object, and forgets it with the object: a memory that can't grow on input from
 * outside. `const targetsOf = perObject((exercise: Exercise) => …)`.
 */
export function perObject<Key extends object, Value>(make: (key: Key) => Value): (key: Key) => Value {
  const made = new WeakMap<Key, { readonly value: Value }>();
  return (key) => {
    const known = made.get(key);
    if (known) return known.value;
    const value = make(key);
    made.set(key, { value });
    return value;
  };
}
