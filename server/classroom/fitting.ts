import { isEmpty, type Answer } from '../../shared/exercise/answer.ts';
import type { Exercise } from '../../shared/exercise/exercise.ts';
import { inputOf } from '../../shared/exercise/input.ts';
import { known } from '../../shared/lib/assert.ts';
import type { ErrorCode } from '../../shared/protocol/errors.ts';
import { holds, instrumentById, isOnNeck } from '../../shared/theory/fretboard.ts';

/** Why something can't be an answer to this exercise, right or not; undefined where it can. */
export function misfitOf(exercise: Exercise, answer: Answer): ErrorCode | undefined {
  const { places, named, root, finger, teacherSays } = answer;
  const instrument = known(instrumentById(exercise.instrument), 'instrument of a round');
  if (!places.every((place) => isOnNeck(instrument, place))) return 'off-the-neck';
  if (teacherSays) return places.length > 0 || named || root || finger ? 'malformed' : undefined;
  const input = inputOf(exercise);
  const [marksRoot, asksFinger] =
    input.kind === 'places' ? [input.marksRoot, input.asksFinger] : [false, false];
  if (root && !marksRoot) return 'root-not-asked';
  if (root && !holds(places, root)) return 'root-not-placed';
  if (finger && !asksFinger) return 'finger-not-asked';
  if (input.kind === 'places') return named ? 'name-not-asked' : undefined;
  if (places.length > 0) return 'places-not-asked';
  const kind = input.wanted === 'note' ? 'note' : 'degree';
  return isEmpty(answer) || named?.kind === kind ? undefined : 'other-name-asked';
}
