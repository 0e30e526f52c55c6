import { isEmpty, type Answer } from '../../shared/exercise/answer.ts';
import type { Exercise } from '../../shared/exercise/exercise.ts';
import type { Heard } from '../../shared/exercise/heard.ts';
import { inputOf, type Input } from '../../shared/exercise/input.ts';
import { known } from '../../shared/lib/assert.ts';
import type { ErrorCode } from '../../shared/protocol/errors.ts';
import { holds, instrumentById, isOnNeck } from '../../shared/theory/fretboard.ts';

/** Why something can't be an answer to this exercise, right or not; undefined where it can. */
export function misfitOf(exercise: Exercise, answer: Answer): ErrorCode | undefined {
  const { places, heard, named, root, finger, teacherSays } = answer;
  const instrument = known(instrumentById(exercise.instrument), 'instrument of a round');
  if (!places.every((place) => isOnNeck(instrument, place))) return 'off-the-neck';
  if (teacherSays) return places.length > 0 || heard || named || root || finger ? 'malformed' : undefined;
  const input = inputOf(exercise);
  const heardMisfit = heard && misfitOfHeard(input, heard, places.length);
  if (heardMisfit) return heardMisfit;
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

/** What was played must be what can be played here, with no more places than are asked for it (SPEC HEARD-2). */
function misfitOfHeard(input: Input, heard: Heard, taps: number): ErrorCode | undefined {
  const playing = input.kind === 'places' ? input.playing : null;
  if (playing?.as !== heard.kind) return 'played-otherwise';
  if (taps > playing.taps.length) return 'tapped-too-much';
  if (heard.kind === 'line' || heard.lowest === undefined) return undefined;
  return heard.tones.some((tone) => tone.pitchClass === heard.lowest) ? undefined : 'malformed';
}
