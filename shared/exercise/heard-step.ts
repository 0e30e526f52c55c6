import { neighbourSteps, usualStep } from '../theory/string-steps.ts';
import type { Exercise } from './exercise.ts';
import type { Slots } from './messages.ts';
import { fretsText, numberText } from './phrases.ts';
import { instrumentOf } from './roots.ts';
import { semitonesTo } from './hearing.ts';
import { pitchClassOn, type Degree } from '../theory/interval.ts';
import type { PitchClass } from '../theory/pitch.ts';
import type { HeardFault } from './verdict.ts';

/** A tone that was heard so many semitones beside where it belongs. */
export interface Beside {
  readonly degree: Degree;
  readonly sounded: PitchClass;
  readonly by: number;
}

/** The tones that are missing, each with the foreign one within two semitones of it that stands for it. */
export function besideIn({ root }: Exercise, fault: HeardFault): readonly Beside[] {
  if (fault.kind !== 'chord') return [];
  const pairs = fault.missing
    .flatMap((degree) =>
      fault.foreign.map((sounded): Beside => ({
        degree,
        sounded,
        by: semitonesTo(pitchClassOn(root, degree), sounded),
      })),
    )
    .filter(({ by }) => Math.abs(by) <= 2)
    .sort((a, b) => Math.abs(a.by) - Math.abs(b.by));
  const found: Beside[] = [];
  for (const pair of pairs)
    if (found.every(({ degree, sounded }) => degree !== pair.degree && sounded !== pair.sounded))
      found.push(pair);
  return found;
}

/** The uneven step that accounts for a tone heard beside its own: the first that moves as far, else the first. */
export function heardStepSlots(exercise: Exercise, fault: HeardFault): Slots {
  const steps = neighbourSteps(instrumentOf(exercise));
  const usual = usualStep(steps) ?? 0;
  const odd = steps.filter(({ frets }) => frets !== usual);
  const [beside] = besideIn(exercise, fault);
  const step = odd.find(({ frets }) => Math.abs(usual - frets) === Math.abs(beside?.by ?? 0)) ?? odd[0];
  return {
    by: fretsText(Math.abs(beside?.by ?? 0)),
    lower: step?.lower ?? '',
    upper: step?.upper ?? '',
    frets: fretsText(step?.frets ?? 0),
    usual: numberText(usual),
  };
}
