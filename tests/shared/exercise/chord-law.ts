/**
 * The law of chords by plain arithmetic, apart from the code under test. Tones in semitones over the root, as MusicXML 4.0
 * `kind` gives them.
 */
export const chordTones: Readonly<Record<string, readonly number[]>> = {
  major: [0, 4, 7],
  minor: [0, 3, 7],
  dim: [0, 3, 6],
  aug: [0, 4, 8],
  sus2: [0, 2, 7],
  sus4: [0, 5, 7],
  '5': [0, 7],
  '7': [0, 4, 7, 10],
  maj7: [0, 4, 7, 11],
  m7: [0, 3, 7, 10],
  m7b5: [0, 3, 6, 10],
  dim7: [0, 3, 6, 9],
  '7sus4': [0, 5, 7, 10],
  '6': [0, 4, 7, 9],
  m6: [0, 3, 7, 9],
  '9': [0, 2, 4, 7, 10],
};

/**
 * Whether what sounds is the chord (SPEC CHORD-2 to CHORD-7). The fifth may stay silent, in 6 and m6 with the root lowest;
 * the root of five tones and more; one of them at most.
 */
export function isChord(quality: string, sounding: ReadonlySet<number>, isRootLowest: boolean): boolean {
  const tones = chordTones[quality] ?? [];
  const silent = tones.filter((tone) => !sounding.has(tone));
  if (![...sounding].every((tone) => tones.includes(tone)) || silent.length > 1) return false;
  if (silent[0] === 7) return tones.length >= 4 && (!['6', 'm6'].includes(quality) || isRootLowest);
  return silent.length === 0 || (silent[0] === 0 && tones.length >= 5);
}
