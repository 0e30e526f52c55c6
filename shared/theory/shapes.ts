import { known } from '../lib/assert.ts';
import type { NamedChord } from './chord-name.ts';
import { chordDegrees } from './chord.ts';
import { familyIds, stackAt, stacksOf, type Family } from './families.ts';
import { fingeringsOf } from './fingering.ts';
import { samePlace, type Instrument, type Place, type StringNumber } from './fretboard.ts';
import type { Degree } from './interval.ts';
import { liesFrom, type Lies } from './lies.ts';
import type { NoteName } from './pitch.ts';
import { everyString, isRootAt } from './root-places.ts';
import { bassOf, sameNotes, shapeAt, type ShapeNote } from './shape.ts';
import type { ChordQuality } from './tables/chords.ts';
import { formTable, type FormId } from './tables/forms.ts';

/** Places of a chord under one hand. */
export interface Shape {
  readonly family: Family;
  /** Of the family `form` only. */
  readonly form?: FormId;
  readonly root: NoteName;
  readonly quality: ChordQuality;
  readonly rootPlace: Place;
  /** From the string with the greatest number to that with the smallest. */
  readonly notes: readonly ShapeNote[];
  /** What sounds lowest. */
  readonly bass: Degree;
  /** 0 is root position, 1 the first inversion. */
  readonly inversion: number;
  /** Where the other notes lie as seen from the root place. */
  readonly lies: Lies;
}

/** A slash bass isn't looked at. */
type Chord = Pick<NamedChord, 'root' | 'quality'>;

/**
 * The shapes of a chord in which this place sounds as its root, family by family, in each from low strings to high:
 * `shapesFrom(standardGuitar, { root: C, quality: 'major' }, place(2, 13), ['triad'])` is the triads on strings 4-3-2
 * and 3-2-1. None where the place doesn't sound the root. What two families share, as the form of D7 and its drop-2,
 * is given once, under the family that comes first. Fingers are 0
 * on open strings, and everywhere in a shape that no hand of usual size can hold.
 */
export function shapesFrom(
  instrument: Instrument,
  chord: Chord,
  rootPlace: Place,
  families: readonly Family[] = familyIds,
): readonly Shape[] {
  if (!isRootAt(instrument, chord.root, rootPlace)) return [];
  const shapes = families.flatMap((family) =>
    laid(instrument, chord, rootPlace, family)
      .map((voiced) => shapeOf(instrument, chord, rootPlace, voiced))
      .toSorted(fromLowStrings),
  );
  return shapes
    .filter((shape, index) => shapes.findIndex((other) => sameNotes(shape.notes, other.notes)) === index)
    .map((shape) => ({ ...shape, notes: fingered(instrument, shape) }));
}

/** The shapes of `shapesFrom` for every root on that string, from the nut on. */
export function shapesOnString(
  instrument: Instrument,
  chord: Chord,
  rootString: StringNumber,
  families: readonly Family[] = familyIds,
): readonly Shape[] {
  return (everyString(instrument, chord.root)[rootString - 1] ?? []).flatMap((rootPlace) =>
    shapesFrom(instrument, chord, rootPlace, families),
  );
}

type Voiced = Pick<Shape, 'family' | 'form' | 'notes'>;

function laid(
  instrument: Instrument,
  { root, quality }: Chord,
  rootPlace: Place,
  family: Family,
): readonly Voiced[] {
  if (family !== 'form')
    return stacksOf(instrument, family, quality).flatMap((stack) => {
      const notes = stackAt(instrument, stack, rootPlace);
      return notes ? [{ family, notes }] : [];
    });
  return formTable.flatMap((row) => {
    // The close triads of the table are the family `triad`.
    const isAsked =
      row.quality === quality && row.rootStrings.includes(rootPlace.string) && !row.form.startsWith('triad');
    const notes = isAsked ? shapeAt(instrument, row, root, rootPlace) : undefined;
    return notes ? [{ family, form: row.form, notes }] : [];
  });
}

function shapeOf(
  instrument: Instrument,
  { root, quality }: Chord,
  rootPlace: Place,
  { notes, ...kind }: Voiced,
): Shape {
  const bass = known(bassOf(instrument, notes), 'lowest note of a shape');
  return {
    ...kind,
    root,
    quality,
    rootPlace,
    notes: notes.toSorted((a, b) => b.place.string - a.place.string),
    bass,
    inversion: chordDegrees(quality).indexOf(bass),
    lies: liesFrom(
      rootPlace,
      notes.map((note) => note.place),
    ),
  };
}

/** A form has its own fingers, where all of them have a fret; other shapes take the easiest. */
function fingered(instrument: Instrument, { form, notes }: Shape): readonly ShapeNote[] {
  if (form !== undefined && notes.every((note) => note.place.fret > 0)) return notes;
  const found = fingeringsOf(
    instrument,
    notes.map((note) => note.place),
  );
  const fingers = (found.ok && found.value[0]?.fingers) || [];
  return notes.map((note) => ({
    ...note,
    finger: fingers.find((one) => samePlace(one.place, note.place))?.finger ?? 0,
  }));
}

function fromLowStrings(a: Shape, b: Shape): number {
  const string = (shape: Shape, at: number) => shape.notes.at(at)?.place.string ?? 0;
  return string(b, 0) - string(a, 0) || string(b, -1) - string(a, -1);
}
