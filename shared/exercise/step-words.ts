import { known } from '../lib/assert.ts';
import type { Place } from '../theory/fretboard.ts';
import { neighbourSteps, usualStep, type NeighbourStep } from '../theory/string-steps.ts';
import type { Exercise } from './exercise.ts';
import { say, type Slots } from './messages.ts';
import { fretsText, fretText, numberText, stringsText, uncapital } from './phrases.ts';
import { instrumentOf } from './roots.ts';
import type { Slipped, Words } from './slip-details.ts';
import type { SlipVerdict } from './verdict.ts';

/** An uneven step between two strings, and the places that came out wrong for it. */
interface CountedStep {
  readonly step: NeighbourStep;
  readonly usual: number;
  readonly moved: SlipVerdict['corrections'];
  /** How many frets those places are too high; negative where they are too low. */
  readonly by: number;
}

/** Of the steps that are not like the others, the one that accounts for most of the corrections. */
function countedStep(exercise: Exercise, { corrections }: SlipVerdict): CountedStep {
  const steps = neighbourSteps(instrumentOf(exercise));
  const usual = usualStep(steps) ?? 0;
  const [most] = steps
    .filter(({ frets }) => frets !== usual)
    .flatMap((step) =>
      [true, false].map((isLower): CountedStep => {
        const by = isLower ? usual - step.frets : step.frets - usual;
        const isMoved = ({ from, to }: { readonly from: Place; readonly to: Place }) =>
          from.string === to.string && from.string > step.upper === isLower && from.fret - to.fret === by;
        return { step, usual, by, moved: corrections.filter(isMoved) };
      }),
    )
    .sort((a, b) => b.moved.length - a.moved.length);
  return known(most, 'uneven step');
}

/** The strings that came out wrong; of a scale whose notes fall on others, all that did. */
function movedStrings({ moved }: CountedStep, { marks }: SlipVerdict): readonly Place[] {
  const astray = marks.filter((mark) => !mark.right).map((mark) => mark.place);
  return moved.length > 0 ? moved.map(({ from }) => from) : astray;
}

function slotsOf(counted: CountedStep, verdict: SlipVerdict): Slots {
  const { step, usual, by } = counted;
  return {
    strings: stringsText(movedStrings(counted, verdict)),
    by: fretsText(Math.abs(by)),
    lower: step.lower,
    upper: step.upper,
    frets: fretsText(step.frets),
    usual: numberText(usual),
  };
}

/** "String 3 is one fret high: string 3 to 2 is four frets, not five." */
export function stepWords({ exercise, verdict }: Slipped): Words {
  const counted = countedStep(exercise, verdict);
  const slots = slotsOf(counted, verdict);
  const [side, back] = counted.by > 0 ? (['high', 'down'] as const) : (['low', 'up'] as const);
  const [first] = counted.moved;
  const isMany = new Set(movedStrings(counted, verdict).map(({ string }) => string)).size !== 1;
  return {
    text: say(`step-${side}-${isMany ? 'many' : 'one'}`, slots),
    tryThis:
      !isMany && first ? say('try-fret', { fret: fretText(first.to) }) : say(`move-strings-${back}`, slots),
  };
}

/** "string 3, one fret high. From string 3 to string 2 is four frets, not five." */
export function stepForClass(exercise: Exercise, verdict: SlipVerdict): string {
  const counted = countedStep(exercise, verdict);
  const slots = slotsOf(counted, verdict);
  return say(`step-${counted.by > 0 ? 'high' : 'low'}-class`, {
    ...slots,
    strings: uncapital(stringsText(movedStrings(counted, verdict))),
  });
}
