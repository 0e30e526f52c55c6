import { chordSounds } from '../theory/chord-rule.ts';
import { pitchClassOn, type Degree } from '../theory/interval.ts';
import { pitchClassOf, type PitchClass } from '../theory/pitch.ts';
import type { Answer } from './answer.ts';
import { hasGivenShape, type BuildExercise } from './exercise.ts';
import { costOfDifference, costOfLastResort, mostCounted } from './explanations.ts';
import { isFingerRight } from './right.ts';
import { heardCauses, neededTones, type HeardCause } from './heard-causes.ts';
import { chordTapsCause, mayBeRoot, tapMarks, tapped, tappedRoot } from './heard-taps.ts';
import { certain, type Heard } from './heard.ts';
import { semitonesTo } from './hearing.ts';
import { degreesAsked, isRootBound, toneOf } from './roots.ts';
import { likeliest } from './slips.ts';
import type { SlipCause, Verdict } from './verdict.ts';

/** What is wrong with the tones alone. */
interface ToneFault {
  readonly missing: readonly Degree[];
  readonly foreign: readonly PitchClass[];
}

/** The verdict on a chord that was heard: its tones by SPEC CHORD, its places by the taps alone (SPEC HEARD-5). */
export function judgeHeardChord(
  exercise: BuildExercise,
  answer: Answer,
  heard: Heard & { kind: 'chord' },
): Verdict {
  const { lowest } = heard;
  const sounding = [...new Set(heard.tones.map((tone) => tone.pitchClass))];
  const fault = toneFault(exercise, inFavour(exercise, heard), lowest);
  const isSound = fault.missing.length === 0 && fault.foreign.length === 0;
  const causes = isSound
    ? besides(exercise, answer, sounding, lowest)
    : slipsOf(exercise, answer, sounding, toneFault(exercise, sounding, lowest), lowest);
  const { best, rival } = likeliest(causes);
  if (!best) {
    const inversion = exercise.bass === undefined && !hasGivenShape(exercise) ? lowest : undefined;
    const degree = inversion === undefined ? undefined : toneOf(exercise, inversion);
    return degree === undefined || degree === '1' ? { kind: 'right' } : { kind: 'right', inversion: degree };
  }
  const marks = tapMarks(exercise, answer);
  const told = { kind: 'chord', ...fault } as const;
  return rival
    ? { kind: 'unclear', causes: [best.cause, rival.cause], marks, missing: [], heard: told }
    : { kind: 'slip', cause: best.cause, marks, corrections: [], missing: [], heard: told };
}

/** A tone of which the ear isn't certain is there where the chord has it, and isn't where it would be foreign. */
function inFavour(
  exercise: BuildExercise,
  { tones, faint = [] }: Heard & { kind: 'chord' },
): readonly PitchClass[] {
  const counted = [...tones, ...faint].filter(
    ({ pitchClass, confidence }) => confidence >= certain || toneOf(exercise, pitchClass) !== undefined,
  );
  return [...new Set(counted.map(({ pitchClass }) => pitchClass))];
}

/** The tones that would have to sound, and those that are foreign; none where it is the chord. */
function toneFault(
  exercise: BuildExercise,
  sounding: readonly PitchClass[],
  lowest: PitchClass | undefined,
): ToneFault {
  const { root, quality, bass } = exercise;
  const degrees = sounding.map((tone) => toneOf(exercise, tone)).filter((degree) => degree !== undefined);
  const foreign = sounding.filter((tone) => toneOf(exercise, tone) === undefined);
  const low = bass ? pitchClassOf(bass) : lowest;
  // Which tone was lowest isn't known: the root, if it sounds.
  const lowDegree = low === undefined ? (degrees.includes('1') ? '1' : undefined) : toneOf(exercise, low);
  const sound = chordSounds(quality, degrees, { bass: lowDegree });
  const lacking = sound.ok ? [] : hasGivenShape(exercise) ? (neededTones(exercise) ?? []) : sound.missing;
  // A root that is bound, or is to be marked, has to sound; so has the bass that was asked for.
  const rootNeeded = isRootBound(exercise) || exercise.marksRoot === true ? ['1'] : [];
  const bassNeeded = degreesAsked(exercise).filter((degree) => bass && pitchClassOn(root, degree) === low);
  const needed = new Set([...lacking, ...rootNeeded, ...bassNeeded]);
  return { missing: [...needed].filter((degree) => !degrees.includes(degree)), foreign };
}

/** The tones are right; what else was asked is perhaps not. */
function besides(
  exercise: BuildExercise,
  answer: Answer,
  sounding: readonly PitchClass[],
  lowest: PitchClass | undefined,
): readonly HeardCause[] {
  const bass = exercise.bass && pitchClassOf(exercise.bass);
  const isOverAnother = bass !== undefined && lowest !== undefined && lowest !== bass;
  const cause: SlipCause | undefined = isOverAnother
    ? 'wrong-bass'
    : (chordTapsCause(exercise, answer, {
        hasRoot: sounding.includes(pitchClassOf(exercise.root)),
        isBassHeard: bass !== undefined && lowest === bass,
      }) ?? (isFingerRight(exercise, answer) ? undefined : 'wrong-finger'));
  return cause ? [{ cause, cost: 0 }] : [];
}

function slipsOf(
  exercise: BuildExercise,
  answer: Answer,
  sounding: readonly PitchClass[],
  fault: ToneFault,
  lowest: PitchClass | undefined,
): readonly HeardCause[] {
  const { bass, ...anyBass } = exercise;
  // The chord is right, and its bass isn't there at all.
  if (bass && isChord(toneFault(anyBass, sounding, lowest))) return [{ cause: 'wrong-bass', cost: 0 }];
  const tap = tappedRoot(exercise, answer) ?? tapped(exercise, answer, 'root');
  const plain = plainCause(exercise, sounding, fault);
  const astray = tap && !mayBeRoot(exercise, tap) ? costOfDifference : 0;
  return [{ ...plain, cost: plain.cost + astray }, ...heardCauses(exercise, sounding, tap)];
}

function isChord({ missing, foreign }: ToneFault): boolean {
  return missing.length === 0 && foreign.length === 0;
}

/** What to call tones that are the chord but for some. */
function plainCause(
  exercise: BuildExercise,
  sounding: readonly PitchClass[],
  { missing, foreign }: ToneFault,
): HeardCause {
  if (foreign.length === 0)
    return { cause: 'missing-tone', cost: costOfDifference * Math.min(missing.length, mostCounted) };
  const [found, ...more] = foreign;
  const silent = degreesAsked(exercise).filter(
    (degree) => !sounding.includes(pitchClassOn(exercise.root, degree)),
  );
  const moved = silent.filter(
    (degree) =>
      found !== undefined && Math.abs(semitonesTo(pitchClassOn(exercise.root, degree), found)) === 1,
  );
  if (
    more.length === 0 &&
    missing.length <= 1 &&
    missing.every((degree) => moved.includes(degree)) &&
    moved.length > 0
  )
    return { cause: 'one-fret-off', cost: 2 * costOfDifference };
  const cost = costOfDifference * (missing.length + foreign.length);
  return missing.length === 0
    ? { cause: 'extra-tone', cost: costOfDifference * Math.min(foreign.length, mostCounted) }
    : { cause: 'other-place', cost: cost + costOfLastResort };
}
