import { known } from '../lib/assert.ts';
import { chordSounds } from './chord-rule.ts';
import { chordDegrees, degreeAt } from './chord.ts';
import type { Degree } from './interval.ts';
import {
  midiAt,
  samePlace,
  pitchClassAt,
  place,
  type Instrument,
  type Place,
  type StringNumber,
} from './fretboard.ts';
import type { NoteName } from './pitch.ts';
import type { ChordQuality } from './tables/chords.ts';
import { formTable, type FormId, type FormRow } from './tables/forms.ts';

/** A note of a form or position on the neck. */
export interface ShapeNote {
  readonly place: Place;
  readonly degree: Degree;
  readonly finger: number;
  readonly optional: boolean;
}

/** The row of a form in a quality that has a root on this string. */
export function formRow(form: FormId, quality: ChordQuality, rootString: StringNumber): FormRow | undefined {
  return formTable.find(
    (row) => row.form === form && row.quality === quality && row.rootStrings.includes(rootString),
  );
}

/**
 * The form laid on the neck so that its root on `rootPlace.string` falls on that place. Undefined where a fret
 * would lie before the nut or past the last one, or where the tuning doesn't make this chord of it. Strings beyond
 * those of the form, as on a guitar with seven, stay silent.
 */
export function shapeAt(
  instrument: Instrument,
  row: FormRow,
  root: NoteName,
  rootPlace: Place,
): readonly ShapeNote[] | undefined {
  const strings = row.frets.length;
  if (strings > instrument.openStrings.length) return undefined;
  const rootFret = known(row.frets[strings - rootPlace.string], 'root fret of a form');
  const notes: ShapeNote[] = [];
  for (const [index, relative] of row.frets.entries()) {
    if (relative === null) continue;
    const spot = place(strings - index, relative + rootPlace.fret - rootFret);
    if (spot.fret < 0 || spot.fret > instrument.fretCount) return undefined;
    const degree = degreeAt(root, chordDegrees(row.quality), pitchClassAt(instrument, spot));
    if (degree === undefined) return undefined;
    notes.push({
      place: spot,
      degree,
      finger: row.fingers[index] ?? 0,
      optional: row.optionalStrings.includes(spot.string),
    });
  }
  const sounding = notes.map((note) => note.degree);
  return chordSounds(row.quality, sounding, { bass: bassOf(instrument, notes) }).ok ? notes : undefined;
}

/** The degree that sounds lowest, whichever string has it: `bassOf(standardGuitar, notes)`; undefined of no notes. */
export function bassOf(instrument: Instrument, notes: readonly ShapeNote[]): Degree | undefined {
  const pitches: readonly number[] = notes.map((note) => midiAt(instrument, note.place));
  return notes[pitches.indexOf(Math.min(...pitches))]?.degree;
}

type Placed = Pick<ShapeNote, 'place'>;

/** Whether both have the same places, in whatever order. */
export function sameNotes(a: readonly Placed[], b: readonly Placed[]): boolean {
  return a.length === b.length && a.every((note) => b.some((other) => samePlace(note.place, other.place)));
}
