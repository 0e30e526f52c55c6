import { namedDegrees } from '../../../dist/shared/exercise/answer.js';
import { rootFingerOf } from '../../../dist/shared/exercise/extras.js';
import { inputOf } from '../../../dist/shared/exercise/input.js';
import { judge } from '../../../dist/shared/exercise/judge.js';
import { likelySlips } from '../../../dist/shared/exercise/likely.js';
import { instrumentOf, rootsOn } from '../../../dist/shared/exercise/roots.js';
import { targetsOf } from '../../../dist/shared/exercise/targets.js';
import { midiAt } from '../../../dist/shared/theory/fretboard.js';
import { parseNoteName } from '../../../dist/shared/theory/pitch.js';

/** What simulated students answer: right answers, and those that real slips lead to. */

/** The slip that most of those who slip make, by kind of exercise. */
const commonest = {
  find: 'low-string-map',
  name: 'letters-two-frets',
  build: 'short-step',
  scale: 'major-for-minor',
};

/** One answer, or null for who gives none, for each of `count` students; `share` of them slip. */
export function dealAnswers(exercise, count, round, share) {
  const right = rightAnswers(exercise);
  const slips = slipsIn(exercise);
  const slipping = Math.round(count * share);
  const answers = Array.from({ length: count }, (_, turn) => {
    if (turn === count - 1) return null;
    // Most take the place nearest the nut; one in four another that is right too.
    if (turn >= slipping || slips.length === 0) return right[turn % 4 === 3 ? turn % right.length : 0];
    // Half of those who slip make the commonest slip, the others one of their own.
    return slips[Math.max(0, turn + 1 - Math.ceil(slipping / 2)) % slips.length];
  });
  // Each round, other students are the ones who slip.
  return answers.map((_, index) => answers[(index * 5 + round * 3) % count]);
}

function rightAnswers(exercise) {
  if (exercise.kind === 'name')
    return names(exercise).filter((answer) => judge(exercise, answer).kind === 'right');
  return targetsOf(exercise).map((target) => whole(exercise, target, placesOf(target)));
}

/** Answers that are not right, the commonest slip first, each slip once. */
function slipsIn(exercise) {
  const byCause = new Map();
  for (const answer of exercise.kind === 'name' ? names(exercise) : wrongPlaces(exercise)) {
    const { kind, cause } = judge(exercise, answer);
    if (kind === 'slip' && !byCause.has(cause)) byCause.set(cause, answer);
  }
  const first = commonest[exercise.kind];
  return [...byCause]
    .sort(([a], [b]) => Number(b === first) - Number(a === first))
    .map(([, answer]) => answer);
}

const usualNotes = 'C D E F G A B C# D# F# G# A# Db Eb Gb Ab Bb'.split(' ').map(parseNoteName);

/** Whatever a place may be called. */
function names({ wanted }) {
  const named =
    wanted === 'note'
      ? usualNotes.map((note) => ({ kind: 'note', note }))
      : namedDegrees.map((degree) => ({ kind: 'degree', degree }));
  return named.map((one) => ({ places: [], named: one }));
}

function wrongPlaces(exercise) {
  const [key] = targetsOf(exercise);
  if (!key) return [];
  const places = placesOf(key);
  const right = whole(exercise, key, places);
  const { ordered, marksRoot, asksFinger } = inputOf(exercise);
  return [
    ...(marksRoot ? [{ ...right, root: places.find((_, index) => key.notes[index].degree !== '1') }] : []),
    ...(asksFinger ? [{ ...right, finger: right.finger === 1 ? 2 : 1 }] : []),
    ...(ordered ? [{ ...right, places: [...right.places.slice(1), right.places[0]] }] : []),
    ...likelySlips(exercise).map((slip) => whole(exercise, key, slip.places)),
    ...(places.length > 1 ? [whole(exercise, key, places.slice(0, -1))] : []),
    ...(exercise.kind === 'find' ? rootsOn(exercise, 3).slice(0, 1) : []).map((place) => ({
      places: [place],
    })),
  ];
}

function placesOf(target) {
  return target.notes.map(({ place }) => place);
}

/** These places, which stand for the target's in turn, in the order that is asked, and with all else that is. */
function whole(exercise, target, places) {
  const { ordered, marksRoot, asksFinger } = inputOf(exercise);
  const root = target.notes.findIndex(({ degree }) => degree === '1');
  return {
    places: ordered ? inOrder(exercise, target, places) : places,
    // Who slips takes the root along.
    ...(marksRoot ? { root: places[root] ?? places[0] } : {}),
    ...(asksFinger ? { finger: rootFingerOf(exercise) } : {}),
  };
}

function inOrder(exercise, target, places) {
  const instrument = instrumentOf(exercise);
  const byPitch = (a, b) => midiAt(instrument, a) - midiAt(instrument, b);
  const roots = target.notes
    .filter(({ degree }) => degree === '1')
    .map(({ place }) => place)
    .sort(byPitch);
  // Where every note name is wanted once, from root to root is enough.
  const isBetween = ({ place }) => byPitch(roots[0], place) <= 0 && byPitch(place, roots.at(-1)) <= 0;
  const taken = places.filter(
    (_, index) => exercise.coverage === 'every-pitch' || isBetween(target.notes[index]),
  );
  const up = taken.sort(byPitch);
  if (exercise.order === 'up') return up;
  return [...(exercise.order === 'down' ? [] : up.slice(0, -1)), ...up.reverse()];
}
