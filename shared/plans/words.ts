import type { Exercise } from '../exercise/exercise.ts';
import { explain } from '../exercise/explain.ts';
import { judge } from '../exercise/judge.ts';
import { answerKey } from '../exercise/key.ts';
import { likelySlips } from '../exercise/likely.ts';
import { slipCauses, slipName } from '../exercise/slip-names.ts';
import { instrumentOf } from '../exercise/roots.ts';
import type { SlipCause } from '../exercise/verdict.ts';
import { wordingOf } from '../exercise/wording.ts';
import { known } from '../lib/assert.ts';
import { formatName, type NoteNaming } from '../theory/naming.ts';
import { parseNoteName } from '../theory/pitch.ts';
import type { ReadyExercise, ReadyPlan } from './ready-plan.ts';

/** What a teacher may say, in the reader's own naming: "String 3 is sol when it is open." */
export function pointsOf({ points }: ReadyPlan, naming: NoteNaming): readonly string[] {
  return points.map((point) =>
    point.replace(/\{(.+?)\}/g, (_, name: string) => formatName(known(parseNoteName(name), name), naming)),
  );
}

/** A slip to expect: its name for the Desk, and what a Stand would say of it in the exercise `of` that title. */
export interface SlipToExpect {
  readonly cause: SlipCause;
  readonly name: string;
  readonly of: string;
  readonly says: string;
}

/** Slips that a teacher can keep in mind at once. */
const mostExpected = 5;

/**
 * The slips that what is new invites, each in the words of its first exercise; those of the instrument before those
 * of reading a chart: for notes "String-6 map" comes first.
 */
export function slipsToExpect({ exercises }: ReadyPlan, naming: NoteNaming): readonly SlipToExpect[] {
  const found = exercises
    .filter(({ part }) => part === 'new')
    .flatMap(({ exercise }) => slipsOf(exercise, naming));
  return slipCauses
    .flatMap((cause) => found.find((slip) => slip.cause === cause) ?? [])
    .slice(0, mostExpected);
}

/** One for each cause, where the answer alone tells that it was this one. */
function slipsOf(exercise: Exercise, naming: NoteNaming): readonly SlipToExpect[] {
  const slips = new Map<SlipCause, SlipToExpect>();
  for (const { cause, places } of likelySlips(exercise)) {
    const verdict = judge(exercise, { places });
    if (slips.has(cause) || verdict.kind !== 'slip' || verdict.cause !== cause) continue;
    const { text, tryThis } = explain(exercise, { places }, verdict, naming);
    const says = [text, tryThis].filter(Boolean).join(' ');
    const of = wordingOf(exercise, naming).title;
    slips.set(cause, { cause, name: slipName(cause, instrumentOf(exercise)), of, says });
  }
  return [...slips.values()];
}

/** What four fingers cover without a stretch, one on each fret. */
const framedFrets = 3;

/** What to mind while playing: a pause always, and a stretch where a hand would need one: `cautionsOf(plan)[0]`. */
export function cautionsOf({
  exercises,
}: {
  readonly exercises: readonly Pick<ReadyExercise, 'exercise'>[];
}): readonly string[] {
  const needsStretch = exercises.some(({ exercise }) => {
    const frets = answerKey(exercise).map(({ place }) => place.fret);
    return exercise.strictness === 'place' && Math.max(...frets) - Math.min(...frets) > framedFrets;
  });
  return needsStretch ? [pause, stretch] : [pause];
}

const pause = 'After 25 minutes of playing, pause for five. Stop at once where something hurts.';
const stretch = 'When you play, a note that lies too far may stay silent, or the hand may move to it.';
