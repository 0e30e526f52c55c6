import { neededDegrees } from '../theory/chord-rule.ts';
import { isOnNeck, samePlace, type Place } from '../theory/fretboard.ts';
import { pitchClassOn, type Degree } from '../theory/interval.ts';
import { octave } from '../theory/pitch.ts';
import { hasGivenShape, type BuildExercise, type ScaleExercise } from './exercise.ts';
import { costOfDifference, dearest, mostCounted } from './explanations.ts';
import { isRootPlace } from './heard-taps.ts';
import { isOctaveFree, soundAt } from './hearing.ts';
import { hypothesesFor, saysOnlyWhat, supposedOf, type Hypothesis, type Supposed } from './hypotheses.ts';
import { degreesAsked, instrumentOf, toneAt } from './roots.ts';
import { onOtherInstruments } from './sounding-otherwise.ts';
import { targetsOf, type Target } from './targets.ts';
import type { SlipCause } from './verdict.ts';

type Played = BuildExercise | ScaleExercise;

/** One cause that may have made what was heard of a right answer. */
export interface HeardCause {
  readonly cause: SlipCause;
  readonly cost: number;
}

/** Slips that are heard wherever they lie on the neck. */
const audible: ReadonlySet<SlipCause> = new Set<SlipCause>([
  'major-for-minor',
  'minor-for-major',
  'one-fret-off',
  'wrong-octave',
]);

/** Slips that move everything by a distance that is heard, unless a tap says that it lay where it should. */
const audibleMoves: ReadonlySet<SlipCause> = new Set<SlipCause>(['relative-root', 'sharp-for-flat']);

/**
 * What each slip would have made of a right answer, held against what sounded instead of against places (SPEC HEARD-7). A
 * slip that speaks of the neck counts only where it puts the root on the place that was tapped for it.
 */
export function heardCauses(
  exercise: Played,
  sounds: readonly number[],
  tap: Place | undefined,
): readonly HeardCause[] {
  const needs = neededTones(exercise);
  const moved = supposedFor(exercise, tap).flatMap(({ target, hypotheses }) => {
    const own = new Set(ownSounds(exercise, target));
    return hypotheses.flatMap((one) => {
      const isTapped = tap !== undefined && isRootAt(exercise, one, tap);
      const told = isTold(exercise, one, tap, isTapped) ? one : byEar(one);
      return told ? held(exercise, told, sounds, { own, needs, tap, isTapped }) : [];
    });
  });
  return [...moved, ...octavesAway(exercise, sounds), ...tunedOtherwise(exercise, sounds, tap)];
}

/** Where nothing says on which octave or string it lay, every right answer sounds alike: one is enough. */
function supposedFor(exercise: Played, tap: Place | undefined): readonly Supposed[] {
  if (tap || !isOctaveFree(exercise)) return supposedOf(exercise);
  return targetsOf(exercise)
    .slice(0, 1)
    .map((target) => ({ target, hypotheses: hypothesesFor(exercise, target) }));
}

/** Whether the slip puts the root there. */
function isRootAt(exercise: Played, { moved }: Hypothesis, tap: Place): boolean {
  return moved.some(({ from, to }) => toneAt(exercise, from) === '1' && samePlace(to, tap));
}

function isTold(
  exercise: Played,
  { cause, moved }: Hypothesis,
  tap: Place | undefined,
  isTapped: boolean,
): boolean {
  if (audible.has(cause)) return true;
  if (!tap) return audibleMoves.has(cause);
  return isTapped && (isFixed(exercise) || shiftOf(moved) !== undefined);
}

/** What is heard of a slip that no tap tells: one fret low is a half step low, whyever. */
function byEar(hypothesis: Hypothesis): Hypothesis | undefined {
  if (hypothesis.cause !== 'nut-as-one') return undefined;
  return { ...hypothesis, cause: 'one-fret-off', cost: saysOnlyWhat };
}

/** Whether the words say on which string each note lies. */
function isFixed(exercise: Played): boolean {
  return exercise.kind === 'build' ? hasGivenShape(exercise) : !isOctaveFree(exercise);
}

/** How many frets everything moved along its strings; undefined where it moved otherwise. */
function shiftOf(moved: Hypothesis['moved']): number | undefined {
  const [first] = moved;
  const frets = first && first.to.fret - first.from.fret;
  const isAlike = moved.every(({ from, to }) => from.string === to.string && to.fret - from.fret === frets);
  return isAlike ? frets : undefined;
}

/** What a slip is held against besides what sounded. */
interface Known {
  /** What a right answer may sound. */
  readonly own: ReadonlySet<number>;
  readonly needs: readonly Degree[] | null;
  readonly tap: Place | undefined;
  /** Whether the slip puts the root on the tap. */
  readonly isTapped: boolean;
}

/** Whether this slip explains most of what was heard, as `byTarget` asks it of places. */
function held(
  exercise: Played,
  { cause, moved, cost }: Hypothesis,
  sounds: readonly number[],
  { own, needs, tap, isTapped }: Known,
): readonly HeardCause[] {
  if (tap && !moved.every(({ to }) => isOnNeck(instrumentOf(exercise), to))) return [];
  const isNeeded = (spot: Place) => needs === null || needs.includes(toneAt(exercise, spot) ?? '');
  const needed = new Set(moved.filter(({ from }) => isNeeded(from)).map(({ to }) => soundAt(exercise, to)));
  const made = new Set([...moved.map(({ to }) => soundAt(exercise, to)), ...others(exercise, moved)]);
  const shared = sounds.filter((sound) => made.has(sound)).length;
  if (shared === 0 || 2 * shared < sounds.length) return [];
  const telling = [...needed].filter((sound) => !own.has(sound));
  const seen = telling.filter((sound) => sounds.includes(sound)).length;
  // A root tapped where only this slip puts it tells as much.
  const isTelling = isTapped && tap !== undefined && !isRootPlace(exercise, tap);
  if (!isTelling && (seen === 0 || 2 * seen <= telling.length)) return [];
  const missing = [...needed].filter((sound) => !sounds.includes(sound)).length;
  const extra = sounds.length - shared;
  // A chord with tones both missing and foreign besides is another chord.
  if (exercise.kind === 'build' && missing > 0 && extra > 0 && !isTapped) return [];
  const differences = missing === 0 || extra === 0 ? Math.min(missing + extra, mostCounted) : missing + extra;
  // What is said of everything must be heard of everything, unless the tap tells the same.
  if (differences > 0 && !isTapped && (shiftOf(moved) ?? 0) !== 0) return [];
  const astray = tap && !isTapped ? costOfDifference : 0;
  const total = cost + costOfDifference * differences + astray;
  return total < dearest ? [{ cause, cost: total }] : [];
}

/** The degrees that have to sound; null where every note of a right answer has to. */
export function neededTones(exercise: Played): readonly Degree[] | null {
  if (exercise.kind === 'scale') return null;
  const needed = neededDegrees(exercise.quality);
  if (!hasGivenShape(exercise)) return needed;
  // A string that may stay silent needn't sound its tone.
  return needed.filter((degree) =>
    targetsOf(exercise).every(({ notes }) => notes.some((note) => note.degree === degree && !note.optional)),
  );
}

/** What a right answer may sound. */
function ownSounds(exercise: Played, target: Target): readonly number[] {
  if (isOctaveFree(exercise)) return askedSounds(exercise);
  return target.accepted.map((spot) => soundAt(exercise, spot));
}

function askedSounds(exercise: Played): readonly number[] {
  return degreesAsked(exercise).map((degree) => pitchClassOn(exercise.root, degree));
}

/** Tones of the chord that this target happens to lack, moved as the others are. */
function others(exercise: Played, moved: Hypothesis['moved']): readonly number[] {
  if (!isOctaveFree(exercise)) return [];
  const shift = shiftOf(moved);
  const shown = new Set(moved.map(({ from }) => soundAt(exercise, from)));
  return askedSounds(exercise)
    .filter((sound) => !shown.has(sound))
    .map((sound) => (sound + (shift ?? 0) + octave) % octave);
}

/** Every pitch of a scale, an octave or two away. */
function octavesAway(exercise: Played, sounds: readonly number[]): readonly HeardCause[] {
  if (isOctaveFree(exercise)) return [];
  const isAway = targetsOf(exercise).some(({ notes }) =>
    [-2, -1, 1, 2].some((octaves) => {
      const made = new Set(notes.map((note) => soundAt(exercise, note.place) + octaves * octave));
      return made.size === sounds.length && sounds.every((sound) => made.has(sound));
    }),
  );
  return isAway ? [{ cause: 'wrong-octave', cost: 1 }] : [];
}

/** What is right in the usual tuning, or without the capo, on the same places; the tap says that it lay there. */
function tunedOtherwise(
  exercise: Played,
  sounds: readonly number[],
  tap: Place | undefined,
): readonly HeardCause[] {
  if (!tap || !isFixed(exercise)) return [];
  return onOtherInstruments(exercise)
    .filter(({ exercise: other }) =>
      targetsOf(other as Played).some(({ notes }) => {
        const made = new Set(notes.map((note) => soundAt(exercise, note.place)));
        const isThere = notes.some((note) => note.degree === '1' && samePlace(note.place, tap));
        return isThere && made.size === sounds.length && sounds.every((sound) => made.has(sound));
      }),
    )
    .map(({ cause }) => ({ cause, cost: 1 }));
}
