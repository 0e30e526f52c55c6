import { failure, success, type Result } from '../lib/result.ts';
import { formatChordName, type NamedChord } from './chord-name.ts';
import { holds, midiAt, samePlace, type Instrument, type Place, type StringNumber } from './fretboard.ts';
import { leastMovement, travelBetween } from './least-movement.ts';
import type { NoteNaming } from './naming.ts';
import type { ShapeNote } from './shape.ts';

/** What a chord may be laid out as; where `rootPlace` is absent the lowest root counts, and a lower cost is easier. */
export interface LayoutShape {
  readonly notes: readonly ShapeNote[];
  readonly rootPlace?: Place;
  readonly cost?: number;
}

/** One chord of a row on the neck. */
export interface LaidChord<Chord extends NamedChord, Shape extends LayoutShape> {
  readonly chord: Chord;
  readonly shape: Shape;
  /** The root, its place and finger. */
  readonly root: ShapeNote;
  /** With the chord before; the first has none. */
  readonly common: CommonTones;
}

export interface CommonTones {
  /** Places that sound in both. */
  readonly held: readonly Place[];
  /** The same pitch, on another string. */
  readonly elsewhere: readonly { readonly from: Place; readonly to: Place }[];
}

/**
 * The row with each chord's root on one string, in the octaves that let the hand travel least over the whole row:
 * `layoutOnString(standardGuitar, chords, string, (chord) => shapesOnString(standardGuitar, chord, string))`.
 * Of the shapes given, those with no root on the string are left out; a chord without any is named in the failure.
 * Frets get narrower, so a row that also fits twelve frets up moves less there: give shapes of low frets alone where it
 * is to stay low.
 */
export function layoutOnString<Chord extends NamedChord, Shape extends LayoutShape>(
  instrument: Instrument,
  chords: readonly Chord[],
  rootString: StringNumber,
  shapesOf: (chord: Chord) => readonly Shape[],
  naming: NoteNaming = 'english',
): Result<readonly LaidChord<Chord, Shape>[], string> {
  const rootIn = ({ notes }: LayoutShape) =>
    notes.find(({ degree, place }) => degree === '1' && place.string === rootString);
  const without = `has no shape here with its root on string ${String(rootString)}`;
  return layout(
    instrument,
    chords,
    shapesOf,
    rootIn,
    (chord) => `${formatChordName(chord, naming)} ${without}.`,
  );
}

/** The same with each root wherever the hand is nearest: `layoutAnywhere(standardGuitar, chords, shapesOf)`. */
export function layoutAnywhere<Chord extends NamedChord, Shape extends LayoutShape>(
  instrument: Instrument,
  chords: readonly Chord[],
  shapesOf: (chord: Chord) => readonly Shape[],
  naming: NoteNaming = 'english',
): Result<readonly LaidChord<Chord, Shape>[], string> {
  const rootIn = ({ notes, rootPlace }: LayoutShape) =>
    rootPlace
      ? notes.find(({ place }) => samePlace(place, rootPlace))
      : notes
          .filter(({ degree }) => degree === '1')
          .sort((a, b) => midiAt(instrument, a.place) - midiAt(instrument, b.place))[0];
  return layout(
    instrument,
    chords,
    shapesOf,
    rootIn,
    (chord) => `${formatChordName(chord, naming)} has no shape here that sounds its root.`,
  );
}

function layout<Chord extends NamedChord, Shape extends LayoutShape>(
  instrument: Instrument,
  chords: readonly Chord[],
  shapesOf: (chord: Chord) => readonly Shape[],
  rootIn: (shape: Shape) => ShapeNote | undefined,
  refusal: (chord: Chord) => string,
): Result<readonly LaidChord<Chord, Shape>[], string> {
  const candidates = chords.map((chord) =>
    shapesOf(chord).flatMap((shape) => {
      const root = rootIn(shape);
      return root ? [{ shape, root, fingers: shape.notes, cost: shape.cost ?? 0 }] : [];
    }),
  );
  const bare = chords.find((_, index) => candidates[index]?.length === 0);
  if (bare) return failure(refusal(bare));
  const movement = leastMovement(candidates, (a, b) => travelBetween(instrument, a, b));
  let before: readonly Place[] = [];
  return success(
    chords.flatMap((chord, index) => {
      const chosen = candidates[index]?.[movement?.chosen[index] ?? -1];
      if (!chosen) return [];
      const places = chosen.fingers.map(({ place }) => place);
      const common = commonTones(instrument, before, places);
      before = places;
      return [{ chord, shape: chosen.shape, root: chosen.root, common }];
    }),
  );
}

/** What two chords in a row share: `commonTones(standardGuitar, [place(2, 1)], [place(2, 1)]).held` is that place. */
export function commonTones(
  instrument: Instrument,
  before: readonly Place[],
  now: readonly Place[],
): CommonTones {
  const held = now.filter((spot) => holds(before, spot));
  const free = before.filter((spot) => !holds(held, spot));
  const elsewhere = now
    .filter((spot) => !holds(held, spot))
    .flatMap((to) => {
      const index = free.findIndex((spot) => midiAt(instrument, spot) === midiAt(instrument, to));
      return free.splice(index, index < 0 ? 0 : 1).map((from) => ({ from, to }));
    });
  return { held, elsewhere };
}
