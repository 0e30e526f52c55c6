import { chordDegrees } from '../theory/chord.ts';
import {
  pitchClassAt,
  place,
  stringNumbers,
  type Instrument,
  type StringNumber,
} from '../theory/fretboard.ts';
import { shapeAt } from '../theory/shape.ts';
import type { ChordQuality } from '../theory/tables/chords.ts';
import { formTable, type FormId } from '../theory/tables/forms.ts';
import type { Voicing } from './exercise.ts';
import { spotsOf, type Candidate, type Ground, type Spot } from './ladder-ground.ts';
import { usualNames } from './usual-roots.ts';

/** Triads in every form that fits round the root; where none does, on three neighbouring strings. */
export function triads(ground: Ground, qualities: readonly ChordQuality[]): readonly Candidate[] {
  const { instrument, strings } = ground;
  return qualities.flatMap((quality) => {
    const forms = new Map(strings.map((string) => [string, formsOn(instrument, quality, string)]));
    return spotsOf(ground, chordDegrees(quality)).flatMap((spot) => {
      const { rootString } = spot.task;
      const fitting = (forms.get(rootString) ?? []).filter(({ below, above }) =>
        spot.frets.some((fret) => fret >= below && fret + above <= instrument.fretCount),
      );
      return fitting.length > 0
        ? fitting.map(({ form, notes }) =>
            built(spot, quality, { kind: 'form', form, full: false }, notes > 3 ? 1 : 0),
          )
        : voicings(instrument, rootString, 3).map((voicing) => built(spot, quality, voicing, 0));
    });
  });
}

/** Seventh chords in any voicing, and on four neighbouring strings. */
export function sevenths(ground: Ground, qualities: readonly ChordQuality[]): readonly Candidate[] {
  return qualities.flatMap((quality) => {
    const harder = quality === 'm7b5' ? 1 : 0;
    return spotsOf(ground, chordDegrees(quality)).flatMap((spot) => [
      built(spot, quality, { kind: 'any' }, harder),
      ...voicings(ground.instrument, spot.task.rootString, 4).map((voicing) =>
        built(spot, quality, voicing, harder + 1),
      ),
    ]);
  });
}

function built({ task, hardness }: Spot, quality: ChordQuality, voicing: Voicing, harder: number): Candidate {
  return {
    exercise: { kind: 'build', ...task, quality, voicing },
    flavour: quality,
    hardness: hardness + harder,
  };
}

/** A form, and the frets that it needs on either side of its root. */
interface FormThere {
  readonly form: FormId;
  readonly below: number;
  readonly above: number;
  readonly notes: number;
}

/** The forms with a root on that string of which the tuning makes the chord. */
function formsOn(instrument: Instrument, quality: ChordQuality, string: StringNumber): readonly FormThere[] {
  return formTable
    .filter((row) => row.quality === quality && row.rootStrings.includes(string))
    .flatMap((row): FormThere[] => {
      const root = row.frets[row.frets.length - string];
      if (root === undefined || root === null) return [];
      const frets = row.frets.filter((fret) => fret !== null);
      const below = root - Math.min(...frets);
      const spot = place(string, below);
      const [name] = usualNames(pitchClassAt(instrument, spot));
      const notes = name && shapeAt(instrument, row, name, spot);
      return notes ? [{ form: row.form, below, above: Math.max(...frets) - root, notes: notes.length }] : [];
    });
}

/** Every run of neighbouring strings that has the root string in it. */
function voicings(instrument: Instrument, rootString: StringNumber, count: number): readonly Voicing[] {
  const all = stringNumbers(instrument);
  return all
    .map((_, first) => all.slice(first, first + count))
    .filter((strings) => strings.length === count && strings.includes(rootString))
    .map((strings) => ({ kind: 'strings', strings }));
}
