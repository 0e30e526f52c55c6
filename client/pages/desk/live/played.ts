import { noAnswer, type Answer } from '../../../../shared/exercise/answer.ts';
import type { Exercise } from '../../../../shared/exercise/exercise.ts';
import { placesHeard } from '../../../../shared/exercise/heard-note.ts';
import { judge } from '../../../../shared/exercise/judge.ts';
import { atLevel, levelOf } from '../../../../shared/exercise/levels.ts';
import type { Verdict } from '../../../../shared/exercise/verdict.ts';
import type { Place } from '../../../../shared/theory/fretboard.ts';

/** Where a note lies that was to be found: the tapped string has its pitch at one fret; undefined where that isn't known. */
function found(exercise: Exercise, answer: Answer): readonly Place[] | undefined {
  const { heard } = answer;
  if (exercise.kind !== 'find' || heard?.kind !== 'line') return undefined;
  return placesHeard(
    exercise,
    answer,
    heard.pitches.map(({ pitch }) => pitch),
  );
}

/** Where an answer lies, as far as that is known (SPEC TURN-5). */
export function placesKnown(exercise: Exercise, answer: Answer): readonly Place[] {
  return found(exercise, answer) ?? answer.places;
}

/** Whether more was played than is known to lie anywhere. */
export function isKnownInPart(exercise: Exercise, answer: Answer): boolean {
  return answer.heard !== undefined && found(exercise, answer) === undefined;
}

/** What the teacher goes on from: what was played can't be changed on the neck, so of that nothing. */
export function enteredFrom({ way: _way, heard, ...placed }: Answer): Answer {
  return heard ? atLevel(noAnswer, levelOf(placed)) : placed;
}

type JudgedAnswer = Answer & { readonly verdict: Verdict };

/** The answer as its chart draws it: a note found by playing stands there as if it had been tapped. What stays heard has no chart. */
export function asDrawn(exercise: Exercise, answer: JudgedAnswer): JudgedAnswer {
  const places = found(exercise, answer);
  if (!places) return answer;
  const { heard: _heard, ...rest } = answer;
  return { ...rest, places, verdict: judge(exercise, { places }) };
}
