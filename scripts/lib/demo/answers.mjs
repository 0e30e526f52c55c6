import { hypothesesFor } from '../../../dist/shared/exercise/hypotheses.js';
import { judge } from '../../../dist/shared/exercise/judge.js';
import { instrumentOf, rootsOn, targetsOf } from '../../../dist/shared/exercise/targets.js';

/** What simulated students answer: the places of right answers, and those that real slips lead to. */

/** The slip that most of those who slip make, by kind of exercise. */
const commonest = { find: 'string-6-map', build: 'string-3-to-2-step', scale: 'major-for-minor' };

/** One answer, or null for who gives none, for each of `count` students; `share` of them slip. */
export function dealAnswers(exercise, count, round, share) {
  const right = targetsOf(exercise).map((target) => target.notes.map((note) => note.place));
  const slips = slipsIn(exercise);
  const slipping = Math.round(count * share);
  const answers = Array.from({ length: count }, (_, turn) => {
    if (turn === count - 1) return null;
    // Most take the place nearest the nut; one in four another that is right too.
    if (turn >= slipping || slips.length === 0) return right[turn % 4 === 3 ? turn % right.length : 0];
    // Half of those who slip make the commonest slip, the others one of their own.
    return slips[turn < slipping / 2 ? 0 : turn % slips.length];
  });
  // Each round, other students are the ones who slip.
  return answers.map((_, index) => answers[(index * 5 + round * 3) % count]);
}

/** Answers that are not right, the commonest slip first, each slip once. */
function slipsIn(exercise) {
  const byCause = new Map();
  for (const target of targetsOf(exercise).slice(0, 1)) {
    for (const { cause, moved } of hypothesesFor(exercise, target)) {
      const places = moved.map(({ to }) => to);
      // Some slips look like another one or lead off the neck.
      if (isOnNeck(exercise, places) && judge(exercise, { places }).cause === cause && !byCause.has(cause))
        byCause.set(cause, places);
    }
    const places = target.notes.map((note) => note.place);
    if (places.length > 1) byCause.set('missing-tone', places.slice(0, -1));
    const [elsewhere] = exercise.kind === 'find' ? rootsOn(exercise, 3) : [];
    if (elsewhere && judge(exercise, { places: [elsewhere] }).kind === 'slip')
      byCause.set('right-note-wrong-string', [elsewhere]);
  }
  const first = commonest[exercise.kind];
  return [...byCause]
    .sort(([a], [b]) => Number(b === first) - Number(a === first))
    .map(([, places]) => places);
}

function isOnNeck(exercise, places) {
  const { fretCount, openStrings } = instrumentOf(exercise);
  return places.every(
    ({ string, fret }) => string >= 1 && string <= openStrings.length && fret >= 0 && fret <= fretCount,
  );
}
