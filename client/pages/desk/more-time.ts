/** Factors on a time limit, in words that don't sort students. */
export const moreTimeWords: readonly (readonly [number, string])[] = [
  [1, 'usual'],
  [1.25, 'a quarter more'],
  [1.5, 'half as much more'],
  [2, 'twice'],
  [3, 'three times'],
];
