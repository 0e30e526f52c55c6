import { chordSounds } from './chord-rule.ts';
import { chordDegrees } from './chord.ts';
import { midiAt, place, stringNumbers, type Instrument, type Place, type StringNumber } from './fretboard.ts';
import { numberIn, semitonesOf, type Degree } from './interval.ts';
import { pitchClass } from './pitch.ts';
import type { ShapeNote } from './shape.ts';
import type { ChordQuality } from './tables/chords.ts';

/**
 * How a shape is voiced: a movable `form` · `triad`, close, on three neighbouring strings · `shell`, the root lowest
 * with third and seventh · `drop-2` and `drop-3`, the close voicing with its second or third voice from above put an
 * octave down.
 */
export type Family = 'form' | StackedFamily;
export type StackedFamily = 'triad' | 'shell' | 'drop-2' | 'drop-3';

/** In the order in which a teacher meets them. */
export const familyIds: readonly Family[] = ['form', 'triad', 'shell', 'drop-2', 'drop-3'];

/** The degrees of a voicing and the strings that take them, lowest voice first. */
export interface Stack {
  readonly degrees: readonly Degree[];
  readonly strings: readonly StringNumber[];
}

/** Where the voices lie, in strings above the lowest (common practice). */
const layouts: Readonly<Record<StackedFamily, readonly (readonly number[])[]>> = {
  triad: [[0, 1, 2]],
  shell: [
    [0, 1, 2],
    [0, 2, 3],
  ],
  'drop-2': [[0, 1, 2, 3]],
  'drop-3': [[0, 2, 3, 4]],
};

/** Frets from the lowest to the highest: further apart, neighbouring strings make no shape that a hand knows. */
const widestSpread = 4;

/**
 * The voicings of a chord in a family on every set of strings: `stacksOf(standardGuitar, 'triad', 'minor')` is three
 * inversions on each of four sets. None where the chord has no such voicing, as no triad of four tones, or where what
 * is left of it isn't the chord (SPEC CHORD), as in a shell of m7♭5. The strings of a set are ordered by what they
 * sound open, so that a re-entrant string takes the voice that suits its pitch.
 */
export function stacksOf(
  instrument: Instrument,
  family: StackedFamily,
  quality: ChordQuality,
): readonly Stack[] {
  const voicings = voicingsOf(family, quality).filter(
    (degrees) => chordSounds(quality, degrees, { bass: degrees[0] }).ok,
  );
  return stringSets(instrument, family).flatMap((strings) =>
    voicings.map((degrees) => ({ degrees, strings })),
  );
}

function stringSets(instrument: Instrument, family: StackedFamily): readonly (readonly StringNumber[])[] {
  const fromLowest = stringNumbers(instrument).toReversed();
  const open = (string: StringNumber) => midiAt(instrument, place(string, 0));
  return layouts[family].flatMap((layout) =>
    fromLowest
      .map((_, lowest) => layout.flatMap((above) => fromLowest[lowest + above] ?? []))
      .filter((strings) => strings.length === layout.length)
      .map((strings) => strings.toSorted((a, b) => open(a) - open(b))),
  );
}

/** Degrees from the lowest voice up; each is the nearest pitch above the one before. */
function voicingsOf(family: StackedFamily, quality: ChordQuality): readonly (readonly Degree[])[] {
  const close = chordDegrees(quality).toSorted(
    (a, b) => pitchClass(semitonesOf(a)) - pitchClass(semitonesOf(b)),
  );
  const inversions = close.map((_, lowest) => [...close.slice(lowest), ...close.slice(0, lowest)]);
  switch (family) {
    case 'triad':
      return close.length === 3 ? inversions : [];
    case 'shell':
      return shells(close);
    case 'drop-2':
      return close.length === 4 ? inversions.map((voices) => dropped(voices, 2)) : [];
    case 'drop-3':
      return close.length === 4 ? inversions.map((voices) => dropped(voices, 3)) : [];
  }
}

/** The close voicing with one voice, counted from the highest, put lowest. */
function dropped(voices: readonly Degree[], fromAbove: number): readonly Degree[] {
  const at = voices.length - fromAbove;
  return [...voices.slice(at, at + 1), ...voices.toSpliced(at, 1)];
}

/** The third may be a sus tone, the seventh a sixth. */
function shells(close: readonly Degree[]): readonly (readonly Degree[])[] {
  const third = close.find((degree) => [2, 3, 4].includes(numberIn(degree)));
  const seventh = close.find((degree) => [6, 7].includes(numberIn(degree)));
  if (third === undefined || seventh === undefined) return [];
  return [
    ['1', third, seventh],
    ['1', seventh, third],
  ];
}

/**
 * The stack laid on the neck so that its root falls on `rootPlace`: the frets follow from the tuning. Undefined where
 * the place's string doesn't take the root, where a fret would lie before the nut or past the last one, or where the
 * frets are more than four apart. An open string counts as fret 0, so that what lies together does so all along the
 * neck. On strings that lie close, as a re-entrant ukulele's, few stacks fit: the voices rise in the order of the open
 * strings, and none crosses another.
 */
export function stackAt(
  instrument: Instrument,
  { degrees, strings }: Stack,
  rootPlace: Place,
): readonly ShapeNote[] | undefined {
  const rootVoice = strings.indexOf(rootPlace.string);
  if (degrees[rootVoice] !== '1') return undefined;
  const heights = heightsOf(degrees);
  const lowest = midiAt(instrument, rootPlace) - (heights[rootVoice] ?? 0);
  const frets = strings.map(
    (string, voice) => lowest + (heights[voice] ?? 0) - midiAt(instrument, place(string, 0)),
  );
  const [low, high] = [Math.min(...frets), Math.max(...frets)];
  if (low < 0 || high > instrument.fretCount || high - low > widestSpread) return undefined;
  return strings.map((string, voice) => ({
    place: place(string, frets[voice] ?? 0),
    degree: degrees[voice] ?? '1',
    finger: 0,
    optional: false,
  }));
}

/**
 * Whether what sounds is the family, lowest pitch first, whichever string has which voice and however wide the hand:
 * `isStacked('triad', 'major', ['3', '5', '1'], [59, 62, 67])`. A shell may have its upper tones an octave up.
 */
export function isStacked(
  family: StackedFamily,
  quality: ChordQuality,
  degrees: readonly Degree[],
  pitches: readonly number[],
): boolean {
  return voicingsOf(family, quality).some(
    (voices) =>
      voices.join() === degrees.join() &&
      (family === 'shell' ||
        heightsOf(voices).every((height, voice) => height === (pitches[voice] ?? 0) - (pitches[0] ?? 0))),
  );
}

/** Semitones of each voice above the lowest. */
function heightsOf(degrees: readonly Degree[]): readonly number[] {
  let height = 0;
  return degrees.map((degree, voice) => {
    const before = degrees[voice - 1];
    if (before !== undefined) height += pitchClass(semitonesOf(degree) - semitonesOf(before));
    return height;
  });
}
