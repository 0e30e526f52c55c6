import { describe, expect, test } from 'vitest';
import type { BuildExercise } from '../../../shared/exercise/exercise.ts';
import { isRight } from '../../../shared/exercise/judge.ts';
import { known } from '../../../shared/lib/assert.ts';
import { midiAt, place, standardGuitar, type StringNumber } from '../../../shared/theory/fretboard.ts';
import { parseNoteName } from '../../../shared/theory/pitch.ts';
import type { ChordQuality } from '../../../shared/theory/tables/chords.ts';
import guitar from '@tombatossals/chords-db/lib/guitar.json' with { type: 'json' };

/** Source: chords-db 0.5.1 (npm @tombatossals/chords-db, MIT, © 2016 David Rubert): published guitar positions. */
interface Position {
  readonly frets: readonly number[];
  readonly baseFret: number;
  readonly midi: readonly number[];
}
interface Entry {
  readonly key: string;
  readonly suffix: string;
  readonly positions: readonly Position[];
}

const qualityOf: Record<string, ChordQuality> = {
  major: 'major',
  minor: 'minor',
  dim: 'dim',
  aug: 'aug',
  sus2: 'sus2',
  sus4: 'sus4',
  '5': '5',
  '7': '7',
  maj7: 'maj7',
  m7: 'm7',
};

const entries = Object.values(guitar.chords as unknown as Record<string, readonly Entry[]>).flat();
const inScope = entries.filter((entry) => qualityOf[entry.suffix] !== undefined);

const placesOf = ({ frets, baseFret }: Position) =>
  frets.flatMap((fret, index) =>
    fret < 0 ? [] : [place(frets.length - index, fret === 0 ? 0 : fret + baseFret - 1)],
  );

const positions = inScope.flatMap((entry) =>
  entry.positions.map((position, index) => ({
    name: `${entry.key} ${entry.suffix} #${String(index)}`,
    entry,
    position,
    places: placesOf(position),
  })),
);

/** The table's own errors within scope: tones that the chord does not have. */
const errors: Record<string, string> = {
  'C# aug #0': 'C♯ F♯ B C♯ F♯: holds F♯ and B, lacks F and A',
  'C# aug #1': 'G♯ C♯ G♯ B F♯ G♯: holds G♯, B and F♯, lacks F and A',
  'A dim #1': 'A C B D: holds B and D, lacks E♭',
  'B aug #3': 'B E♭ G B E: the open string 1 is E',
};

test('CHORD: nine of our ten qualities are in the package, on twelve roots each; the power chord is not', () => {
  expect(inScope).toHaveLength(9 * 12);
  expect(positions).toHaveLength(433);
  expect(entries.some((entry) => entry.suffix === '5')).toBe(false);
});

test('NECK-1: every position sounds the pitches that the package says', () => {
  for (const { name, position, places } of positions)
    expect([name, places.map((spot) => midiAt(standardGuitar, spot))]).toEqual([name, position.midi]);
});

describe('CHORD-1…4: every published position is the chord, but for the errors of the table', () => {
  test.each(positions.map((one) => [one.name, one] as const))('%s', (name, { entry, places }) => {
    const exercise: BuildExercise = {
      kind: 'build',
      instrument: 'guitar',
      root: known(parseNoteName(entry.key), entry.key),
      rootString: 2 as StringNumber,
      strictness: 'anywhere',
      range: null,
      quality: known(qualityOf[entry.suffix], entry.suffix),
      voicing: { kind: 'any' },
    };
    expect(isRight(exercise, places)).toBe(errors[name] === undefined);
  });

  test('each listed error is a position of the package', () => {
    const names = positions.map((one) => one.name);
    for (const name of Object.keys(errors)) expect(names).toContain(name);
  });
});
