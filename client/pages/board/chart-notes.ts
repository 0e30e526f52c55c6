import type { Correction, KeyNote, Verdict } from '../../../shared/exercise/verdict.ts';
import type { RevealView } from '../../../shared/protocol/views.ts';
import {
  samePlace,
  type Fret,
  type FretRange,
  type Instrument,
  type Place,
} from '../../../shared/theory/fretboard.ts';
import type { NoteNaming } from '../../../shared/theory/naming.ts';
import { octave } from '../../../shared/theory/pitch.ts';
import { keyNote, namedNote, silentStrings, slurs } from '../../fretboard/key-notes.ts';
import type { NeckNote } from '../../fretboard/state.ts';

/** What the Board's charts draw, from what the server sent. */
export interface Chart {
  readonly notes: readonly NeckNote[];
  readonly corrections: readonly Correction[];
}

/** Where notes lie further apart than this, in frets, a mark has no room for letters that can be read from afar. */
const mostLabelled = 12;

/** The key's notes. On a very long chart the root's lozenge says enough. */
export function keyChart(notes: readonly KeyNote[]): readonly NeckNote[] {
  const labelled = spanOf(notes.map((note) => note.place)) <= mostLabelled;
  return notes.map(keyNote).map((note) => (labelled ? note : { ...note, label: undefined }));
}

export function tapsChart(places: readonly Place[]): readonly NeckNote[] {
  return places.map((place) => ({ place, look: 'filled' }));
}

/** The slip to know, as far as the key can show it: a correction that leads elsewhere would point at nothing. */
function slipOn({ exercise, notes }: RevealView, example: Verdict | null) {
  const none = { places: [], corrections: [] };
  if (example === null || example.kind === 'right') return none;
  const inKey = (at: Place) => notes.some((note) => samePlace(note.place, at));
  const all = example.kind === 'slip' ? example.corrections : [];
  const corrections = all.filter(({ from, to }) => inKey(to) && !inKey(from));
  const astray = all.filter((correction) => !corrections.includes(correction));
  const places = example.marks
    .filter(
      ({ place, right }) => !right && !inKey(place) && astray.every(({ from }) => !samePlace(from, place)),
    )
    .map((mark) => mark.place);
  // A chart that fits beside the words is worth more than a slip far away from it; a single note is its slip's partner.
  const key = notes.map((note) => note.place);
  const far = exercise.kind !== 'find' && !isLong(key) && isLong([...key, ...places]);
  return far ? none : { places, corrections };
}

/** The answer key, with the slip to know drawn into it: where it was, and the slur to where it should be. */
export function revealChart(reveal: RevealView, example: Verdict | null, naming: NoteNaming): Chart {
  const { exercise, notes } = reveal;
  // A wrong name has no place of its own: the words say it.
  if (exercise.kind === 'name') return { notes: [namedNote(exercise, naming)], corrections: [] };
  const slip = slipOn(reveal, example);
  const silent = silentStrings(exercise, notes);
  return {
    notes: [
      ...keyChart(notes),
      ...slip.places.map((at): NeckNote => ({ place: at, look: 'slip' })),
      ...silent.filter((open) => slip.places.every((at) => !samePlace(at, open.place))),
    ],
    corrections: slurs(slip.corrections, notes),
  };
}

function spanOf(places: readonly Place[]): number {
  const frets = places.map(({ fret }) => fret).filter((fret) => fret > 0);
  return frets.length === 0 ? 0 : Math.max(...frets) - Math.min(...frets);
}

/** Whether a chart of these places is too long to stand upright beside the words. */
export function isLong(places: readonly Place[]): boolean {
  return spanOf(places) > 7;
}

/** The neck to its octave, or all of it where a tap lies higher: it must not move with each tap. */
export function tapsWindow(instrument: Instrument, places: readonly Place[]): FretRange {
  const high = places.some(({ fret }) => fret > octave)
    ? instrument.fretCount
    : Math.min(octave, instrument.fretCount);
  return { low: 1 as Fret, high: high as Fret };
}

/** More than this, in px of the 1920 × 1080 picture, would leave the words no room. */
const widestChart = 960;

/** A chart's column: wider for many strings, so that their gap stays `gap` px wide and its text can be read from afar. */
export function chartWidth(instrument: Instrument, gap: number, least: number): string {
  const beside = 0.86;
  const wanted = gap * (instrument.openStrings.length + beside);
  return String(Math.round(Math.min(widestChart, Math.max(least, wanted))));
}
