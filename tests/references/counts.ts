/**
 * How many checks each outside source gives, and how they came out. The tests that hold a source assert its row;
 * `readme.test.ts` holds the table in README.md to these numbers.
 */
export interface SourceCount {
  readonly cases: number;
  readonly agreed: number;
  /** Each with its reason in the test or in a data file beside it. */
  readonly disagreed: number;
  /** Not what this program does; the README says why. */
  readonly notHeld: number;
}

function count(cases: number, disagreed = 0, notHeld = 0): SourceCount {
  return { cases, agreed: cases - disagreed - notHeld, disagreed, notHeld };
}

export const counts = {
  'spelling.json': count(298),
  'chords.json': count(146),
  'scales.json': count(44),
  'display.json': count(2),
  'reference.json, qualities': count(45),
  'reference.json, tunings': count(14),
  'reference.json, movable forms': count(10),
  'reference.json, string 2': count(13),
  'reference.json, Forte set classes': count(12),
  'reference.json, hands': count(1),
  'fingerings.json': count(35),
  'scales.json, positions': count(12),
  'scales.json, three notes a string': count(14),
  'chords-db': count(2069, 31),
  'chords-db, fingerings': count(2069, 29),
  'chords-db, movable forms': count(51, 1),
  'tonal, chords': count(738, 73),
  'tonal, scales': count(360, 36),
  'tonal, intervals': count(65),
  'teoria, chords': count(792, 1),
  'teoria, scales': count(234, 18),
  'music-theory-data, tunings': count(11),
  'MusicXML 4.0, kinds': count(45),
  'MusicXML 4.0, schema': count(33, 0, 8),
  'MIDI 1.0 and ISO 16': count(10),
} as const satisfies Readonly<Record<string, SourceCount>>;

export type Source = keyof typeof counts;
