import { namedDegrees, type Named } from '../../../../shared/exercise/answer.ts';
import type { Exercise, NameExercise } from '../../../../shared/exercise/exercise.ts';
import { judge } from '../../../../shared/exercise/judge.ts';
import { answerKey } from '../../../../shared/exercise/key.ts';
import { likelySlips } from '../../../../shared/exercise/likely.ts';
import { namedText, rightName } from '../../../../shared/exercise/name-words.ts';
import { saysWhy } from '../../../../shared/exercise/pattern.ts';
import { capital, placeText } from '../../../../shared/exercise/phrases.ts';
import { instrumentOf } from '../../../../shared/exercise/roots.ts';
import { slipCauses, slipName } from '../../../../shared/exercise/slip-names.ts';
import { usualNames } from '../../../../shared/exercise/usual-roots.ts';
import { targetsOf } from '../../../../shared/exercise/targets.ts';
import type { SlipCause } from '../../../../shared/exercise/verdict.ts';
import { wordingOf } from '../../../../shared/exercise/wording.ts';
import type { NoteNaming } from '../../../../shared/theory/naming.ts';
import { octave, pitchClass } from '../../../../shared/theory/pitch.ts';
import { landingText } from './landing.ts';
import { byString } from './places-text.ts';
import type { SheetItem } from './sheet.ts';

/** What whoever marks the quiz reads of one exercise. */
export interface AnswerLine {
  readonly number: string;
  readonly title: string;
  readonly exercise: Exercise;
  /** What is right, in words. */
  readonly right: string;
  /** "String-6 map: fret 10." */
  readonly slips: readonly string[];
}

/** Slips that can be looked for while marking. */
const mostSlips = 5;

export function answerLineOf({ number, chart }: SheetItem, naming: NoteNaming): readonly AnswerLine[] {
  if (chart.kind === 'map') return [];
  const title = wordingOf(chart, naming).title;
  const slips = chart.kind === 'name' ? nameSlips(chart, naming) : placeSlips(chart);
  return [
    { number, title, exercise: chart, right: rightText(chart, naming), slips: slips.slice(0, mostSlips) },
  ];
}

function rightText(exercise: Exercise, naming: NoteNaming): string {
  if (exercise.kind === 'name')
    return `${capital(placeText(exercise.place))}: ${namedText(rightName(exercise), exercise.wanted, naming)}.`;
  const others = isOneOfMany(exercise) ? ' Whatever else fits the words is right too.' : '';
  return `${capital(byString(answerKey(exercise).map(({ place }) => place)))}.${others}`;
}

/** Whether the key is one right answer of several. */
function isOneOfMany(exercise: Exercise): boolean {
  if (exercise.kind === 'find') return false;
  const isOpen =
    exercise.kind === 'build'
      ? exercise.voicing.kind === 'strings' || exercise.voicing.kind === 'any'
      : exercise.kind === 'scale' && exercise.coverage === 'every-tone';
  return isOpen || targetsOf(exercise).length > 1;
}

/** Each landing once, with every slip that leads there. */
function placeSlips(exercise: Exercise): readonly string[] {
  const key = answerKey(exercise).map(({ place }) => place);
  const landings = new Map<string, SlipCause[]>();
  // Those of the instrument come before those of reading a chart.
  const slips = likelySlips(exercise).toSorted(
    (a, b) => slipCauses.indexOf(a.cause) - slipCauses.indexOf(b.cause),
  );
  for (const { cause, places } of slips) {
    const text = landingText(exercise, key, places);
    if (text === undefined) continue;
    landings.set(text, [...new Set([...(landings.get(text) ?? []), cause])]);
  }
  return [...landings].map(([text, causes]) => slipText(exercise, causes, text));
}

function slipText(exercise: Exercise, causes: readonly SlipCause[], landing: string): string {
  const names = causes.map((cause) => slipName(cause, instrumentOf(exercise)));
  return `${names.join(' or ')}: ${landing}.`;
}

/** The wrong names that tell why they were given. */
function nameSlips(exercise: NameExercise, naming: NoteNaming): readonly string[] {
  return namesFor(exercise).flatMap((named) => {
    const verdict = judge(exercise, { places: [], named });
    return verdict.kind === 'slip' && saysWhy(verdict.cause)
      ? slipText(exercise, [verdict.cause], namedText(named, exercise.wanted, naming))
      : [];
  });
}

function namesFor({ wanted }: NameExercise): readonly Named[] {
  if (wanted !== 'note') return namedDegrees.map((degree) => ({ kind: 'degree', degree }));
  return Array.from({ length: octave }, (_, sounding) => usualNames(pitchClass(sounding)))
    .flat()
    .map((note) => ({ kind: 'note', note }));
}
