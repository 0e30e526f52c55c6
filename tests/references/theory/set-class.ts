/**
 * Prime forms of the set classes that `reference.json` names. Source: Allen Forte, The Structure of Atonal Music
 * (1973), appendix 1; written from memory.
 */
export const primeForms: Readonly<Record<string, readonly number[]>> = {
  '3-9': [0, 2, 7],
  '3-10': [0, 3, 6],
  '3-11': [0, 3, 7],
  '3-12': [0, 4, 8],
  '4-20': [0, 1, 5, 8],
  '4-26': [0, 3, 5, 8],
  '4-27': [0, 2, 5, 8],
  '4-28': [0, 3, 6, 9],
};

const octave = 12;

/** The rotation from 0 on that is narrowest, and of equals the one packed furthest to the left. */
export function normalForm(set: readonly number[]): readonly number[] {
  const sorted = [...new Set(set)].sort((a, b) => a - b);
  const rotations = sorted.map((first, index) =>
    [...sorted.slice(index), ...sorted.slice(0, index)].map((one) => (one - first + octave) % octave),
  );
  return rotations.reduce((best, one) => (isPackedMore(one, best) ? one : best));
}

/** The one of a set and its inversion that is packed further to the left. */
export function primeForm(set: readonly number[]): readonly number[] {
  const own = normalForm(set);
  const inverted = normalForm(set.map((one) => (octave - one) % octave));
  return isPackedMore(inverted, own) ? inverted : own;
}

/** Narrower between the outer tones; then the nearer second tone, and so on. */
function isPackedMore(a: readonly number[], b: readonly number[]): boolean {
  const order = [a.length - 1, ...a.keys()];
  for (const index of order) {
    const difference = (a[index] ?? 0) - (b[index] ?? 0);
    if (difference !== 0) return difference < 0;
  }
  return false;
}
