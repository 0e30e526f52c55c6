import {
  pitchClassAt,
  place,
  type FretRange,
  type Instrument,
  type InstrumentId,
  type StringNumber,
} from '../theory/fretboard.ts';
import type { Degree } from '../theory/interval.ts';
import { octave, pitchClass, pitchClassOf, type NoteName } from '../theory/pitch.ts';
import type { Exercise } from './exercise.ts';
import { usualRoots } from './usual-roots.ts';

/** An exercise that a rung may ask; whether it can be asked is `checkExercise`'s to say. */
export interface Candidate {
  readonly exercise: Exercise;
  /** What is varied within a rung: the quality, the scale, the kind of name. */
  readonly flavour: string;
  /** 0 comes first. */
  readonly hardness: number;
}

/** Where a rung looks. No roots: the usual ones. */
export interface Ground {
  readonly instrument: Instrument;
  readonly strings: readonly StringNumber[];
  readonly roots: readonly NoteName[];
  readonly range: FretRange | null;
}

/** A root on a string, as an exercise has it, and where on it. */
export interface Spot {
  readonly task: {
    readonly instrument: InstrumentId;
    readonly root: NoteName;
    readonly rootString: StringNumber;
    readonly strictness: 'string';
    readonly range: FretRange | null;
  };
  /** Lowest first, at least one. */
  readonly frets: readonly number[];
  readonly hardness: number;
}

/** Every root on every string of the ground, where it lies there. */
export function spotsOf(ground: Ground, degrees: readonly Degree[]): readonly Spot[] {
  const { instrument, strings, range } = ground;
  const roots = ground.roots.length > 0 ? ground.roots : usualRoots(degrees);
  return strings.flatMap((rootString) =>
    roots.flatMap((root): Spot[] => {
      const frets = fretsOf(ground, root, rootString);
      const [lowest] = frets;
      if (lowest === undefined) return [];
      const task = { instrument: instrument.id, root, rootString, strictness: 'string' as const, range };
      return [{ task, frets, hardness: hardnessOf(root, lowest) }];
    }),
  );
}

/** The frets of a string that sound the note: C on string 2 of a guitar, 1 and 13. */
export function fretsOf(
  { instrument, range }: Ground,
  note: NoteName,
  string: StringNumber,
): readonly number[] {
  const frets: number[] = [];
  const first: number = pitchClass(pitchClassOf(note) - pitchClassAt(instrument, place(string, 0)));
  for (let fret = first; fret <= (range?.high ?? instrument.fretCount); fret += octave)
    if (fret >= (range?.low ?? 0)) frets.push(fret);
  return frets;
}

/** An accidental is harder, and so is what lies far from the nut. */
export function hardnessOf(note: NoteName, fret: number): number {
  return (note.alteration === 0 ? 0 : 1) + (fret > 7 ? 1 : 0);
}
