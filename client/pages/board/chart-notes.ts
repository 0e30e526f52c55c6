import type { Correction, KeyNote, Verdict } from '../../../shared/exercise/verdict.ts';
import type { RevealView } from '../../../shared/protocol/views.ts';
import {
  place,
  samePlace,
  stringNumbers,
  type Fret,
  type FretRange,
  type Instrument,
  type Place,
} from '../../../shared/theory/fretboard.ts';
import type { NeckNote } from '../../fretboard/state.ts';

/** What the Board's charts draw, from what the server sent. */
export interface Chart {
  readonly notes: readonly NeckNote[];
  readonly corrections: readonly Correction[];
}

/** `degreeSign('b3')` is "♭3"; the root is R. */
export function degreeSign(degree: string): string {
  return degree === '1' ? 'R' : degree.replaceAll('b', '♭').replaceAll('#', '♯');
}

export function keyChart(notes: readonly KeyNote[]): readonly NeckNote[] {
  return notes.map(({ place, degree, finger, optional }) => ({
    place,
    look: 'filled',
    label: degreeSign(degree),
    root: degree === '1',
    finger,
    optional,
  }));
}

export function tapsChart(places: readonly Place[]): readonly NeckNote[] {
  return places.map((place) => ({ place, look: 'filled' }));
}

/** Strings that stay silent, where the exercise fixes the voicing. */
function silent(instrument: Instrument, { exercise, notes }: RevealView): readonly Place[] {
  if (exercise.kind !== 'build' || exercise.voicing.kind === 'any') return [];
  return stringNumbers(instrument)
    .filter((string) => notes.every((note) => note.place.string !== string))
    .map((string) => place(string, 0));
}

/** The answer key, with the slip to know drawn into it: where it was, and the slur to where it should be. */
export function revealChart(instrument: Instrument, reveal: RevealView, example: Verdict | null): Chart {
  const wrong =
    example === null || example.kind === 'right' ? [] : example.marks.filter(({ right }) => !right);
  const slips = wrong
    .map((mark) => mark.place)
    .filter((slip) => reveal.notes.every((note) => !samePlace(note.place, slip)));
  const muted = silent(instrument, reveal).filter((open) => slips.every((slip) => !samePlace(slip, open)));
  return {
    notes: [
      ...keyChart(reveal.notes),
      ...slips.map((slip): NeckNote => ({ place: slip, look: 'slip' })),
      ...muted.map((open): NeckNote => ({ place: open, look: 'muted' })),
    ],
    corrections: example?.kind === 'slip' ? example.corrections : [],
  };
}

/** Whether a chart of these notes is too long to stand upright beside the words. */
export function isLong(places: readonly Place[]): boolean {
  const frets = places.map(({ fret }) => fret).filter((fret) => fret > 0);
  return frets.length > 0 && Math.max(...frets) - Math.min(...frets) > 8;
}

/** The neck to its octave, or all of it where a tap lies higher: it must not move with each tap. */
export function tapsWindow(instrument: Instrument, places: readonly Place[]): FretRange {
  const high = places.some(({ fret }) => fret > 12)
    ? instrument.fretCount
    : Math.min(12, instrument.fretCount);
  return { low: 1 as Fret, high: high as Fret };
}
