import { known } from '../lib/assert.ts';
import { chordDegrees } from '../theory/chord.ts';
import { intervalName } from '../theory/interval-names.ts';
import { numberIn, pitchClassOn, type Degree } from '../theory/interval.ts';
import { pitchClass, pitchClassOf, type PitchClass } from '../theory/pitch.ts';
import type { Answer } from './answer.ts';
import { hasGivenShape, type Exercise } from './exercise.ts';
import { besideIn, heardStepSlots } from './heard-step.ts';
import { isRootPlace, isTapAsked, mayBeRoot, tapped, tappedRoot } from './heard-taps.ts';
import { keyOf, nameOf, soundingIn } from './heard-words.ts';
import type { Heard } from './heard.ts';
import { semitonesTo } from './hearing.ts';
import { say } from './messages.ts';
import { fretText, list } from './phrases.ts';
import { degreesAsked, rootsOn, toneOf } from './roots.ts';
import { causeWords, isAllRight, type Slipped, type Words } from './slip-details.ts';
import { slotsOf } from './slots.ts';
import { targetsOf } from './targets.ts';
import { twinsOf } from './twins.ts';
import { scaleName, subjectOf } from './wording.ts';

/** An answer of which it is known what was heard. */
export type HeardAnswer = Answer & { readonly heard: Heard };

/** The slip by ear and why, and what to try; what a tap says is told as of any other answer. */
export function heardCauseWords(slipped: Slipped & { readonly answer: HeardAnswer }): Words {
  const { exercise, answer, verdict } = slipped;
  if (exercise.kind === 'name') return causeWords(slipped);
  const slots = slotsOf(exercise, slipped.naming);
  const tones = tonesOf(slipped);
  switch (verdict.cause) {
    case 'major-for-minor':
    case 'minor-for-major':
      return thirdWords(slipped);
    case 'one-fret-off':
      return besideWords(slipped);
    case 'short-step':
      return stepWords(slipped);
    case 'missing-tone':
    case 'extra-tone':
    case 'other-place':
      return verdict.heard?.kind === 'chord'
        ? toneWords(slipped)
        : { text: lineText(slipped), tryThis: tones };
    case 'wrong-octave':
      if (!isAllRight(verdict) && exercise.kind === 'find') return { text: lineText(slipped), tryThis: '' };
      return { text: say('heard-octaves'), tryThis: '' };
    case 'low-string-map': {
      const tap = tappedRoot(exercise, answer);
      const own = tap && rootsOn(exercise, tap.string).find((spot) => mayBeRoot(exercise, spot));
      if (!tap || !own) return causeWords(slipped);
      return {
        text: say('low-string-map', { ...slots, fret: fretText(tap) }),
        tryThis: say('low-string-map-try', { string: own.string, fret: fretText(own) }),
      };
    }
    case 'right-note-wrong-string':
      if (exercise.kind === 'find') return causeWords(slipped);
      return { text: say('heard-root-string', slots), tryThis: say('look-on-string', slots) };
    case 'wrong-order':
      return {
        text: isAllRight(verdict) ? say('heard-order') : lineText(slipped),
        tryThis: orderTry(slipped),
      };
    case 'wrong-root-mark': {
      const tap = tapped(exercise, answer, 'root') ?? tapped(exercise, answer, 'lowest');
      const isSilent = tap !== undefined && isRootPlace(exercise, tap);
      return {
        text: say(isSilent ? 'heard-root-silent' : 'heard-root-elsewhere', slots),
        tryThis: isSilent ? say('untapped-root-try', slots) : say('root-mark-try', slots),
      };
    }
    case 'untapped': {
      if (exercise.kind === 'find')
        return { text: say('untapped-string'), tryThis: say('untapped-string-try') };
      const what = isTapAsked(exercise, 'root') && !tapped(exercise, answer, 'root') ? 'root' : 'lowest';
      return { text: say(`untapped-${what}`, slots), tryThis: say(`untapped-${what}-try`, slots) };
    }
    default:
      return causeWords(slipped);
  }
}

/** "E minor: E, G, B.", of a line nothing. */
function tonesOf({ exercise, naming }: Slipped): string {
  if (exercise.kind !== 'build') return '';
  const shown = hasGivenShape(exercise) ? targetsOf(exercise).flatMap(({ notes }) => notes) : undefined;
  const notes = degreesAsked(exercise)
    .filter((degree) => !shown || shown.some((note) => note.degree === degree))
    .map((degree) => nameOf(pitchClassOn(exercise.root, degree), naming, keyOf(exercise)));
  return say('heard-tones', { subject: subjectOf(exercise, naming), notes: notes.join(', ') });
}

function thirdWords({ exercise, answer, verdict, naming }: Slipped): Words {
  const side = verdict.cause === 'major-for-minor' ? 'high' : 'low';
  const tryThis = say(`scale-third-${side}-try`);
  if (exercise.kind !== 'scale') return { text: say(`heard-third-${side}`), tryThis };
  const sounding = answer.heard ? soundingIn(answer.heard, keyOf(exercise)) : [];
  const above = (degree: Degree) => pitchClassOn(exercise.root, degree);
  const twin = twinsOf(exercise).find(({ degrees }) => degrees.every((one) => sounding.includes(above(one))));
  if (!twin?.scale) return { text: say(`heard-third-${side}`), tryThis };
  return { text: say(`heard-twin-${side}`, { twin: scaleName(exercise.root, twin.scale, naming) }), tryThis };
}

/** "The fifth is a half step high.", or all of it. */
function besideWords(slipped: Slipped): Words {
  const { exercise, verdict } = slipped;
  const heard = verdict.heard;
  if (heard?.kind !== 'chord') return lineBeside(slipped);
  const [first] = besideIn(exercise, silentToo(exercise, slipped.answer, heard));
  if (!first) return toneWords(slipped);
  const side = first.by > 0 ? 'high' : 'low';
  const tryThis = say(side === 'high' ? 'move-down-fret' : 'move-up-fret');
  if (heard.foreign.length > 1) return { text: say(`heard-all-${side}`), tryThis };
  return {
    text: say(`heard-beside-${side}`, { tone: toneWord(exercise, first.degree) }),
    tryThis: tonesOf(slipped),
  };
}

/** A tone that may stay silent may be the one that moved. */
function silentToo(
  exercise: Exercise,
  { heard }: Answer,
  fault: {
    readonly kind: 'chord';
    readonly missing: readonly Degree[];
    readonly foreign: readonly PitchClass[];
  },
) {
  if (fault.missing.length > 0 || !heard) return fault;
  const sounding = soundingIn(heard, keyOf(exercise));
  return {
    ...fault,
    missing: degreesAsked(exercise).filter(
      (degree) => !sounding.includes(pitchClassOn(exercise.root, degree)),
    ),
  };
}

function lineBeside(slipped: Slipped): Words {
  const { exercise, verdict } = slipped;
  const { heard } = verdict;
  const by =
    exercise.kind !== 'find'
      ? wholeShift(slipped)
      : heard?.kind === 'line' && heard.sounded !== undefined
        ? semitonesTo(pitchClassOf(exercise.root), pitchClass(heard.sounded))
        : undefined;
  if (by === undefined) return { text: lineText(slipped), tryThis: '' };
  const side = by > 0 ? 'high' : 'low';
  const text =
    exercise.kind === 'find' ? say(`heard-beside-${side}`, { tone: 'note' }) : say(`heard-all-${side}`);
  return { text, tryThis: say(side === 'high' ? 'move-down-fret' : 'move-up-fret') };
}

/** By how many semitones every note of a line is off. */
function wholeShift({ exercise, answer: { heard } }: Slipped): number | undefined {
  if (heard?.kind !== 'line') return undefined;
  return [1, -1].find((by) =>
    heard.pitches.every(({ pitch }) => toneOf(exercise, pitchClass(pitch - by)) !== undefined),
  );
}

function stepWords(slipped: Slipped): Words {
  const { exercise, verdict } = slipped;
  const { heard } = verdict;
  if (!heard) return causeWords(slipped);
  const slots = heardStepSlots(exercise, heard);
  const [first] = besideIn(exercise, heard);
  if (!first) return { text: say('heard-step', slots), tryThis: '' };
  const side = first.by > 0 ? 'high' : 'low';
  return {
    text: say(`heard-step-${side}`, { ...slots, tone: toneWord(exercise, first.degree) }),
    tryThis: '',
  };
}

/** What is missing, else what is foreign. */
function toneWords(slipped: Slipped): Words {
  const { exercise, verdict, naming } = slipped;
  const tryThis = tonesOf(slipped);
  const heard = verdict.heard;
  if (heard?.kind !== 'chord' || verdict.cause === 'other-place')
    return { text: say('heard-other'), tryThis };
  const { missing, foreign } = heard;
  if (foreign.length === 0 && missing.length > 0) {
    const tones = list(missing.map((degree) => toneWord(exercise, degree)));
    return {
      text: say(missing.length === 1 ? 'heard-missing-one' : 'heard-missing-many', { tones }),
      tryThis,
    };
  }
  if (foreign.length === 0) return { text: say('heard-other'), tryThis };
  const notes = list(foreign.map((tone) => nameOf(tone, naming, keyOf(exercise))));
  const subject = subjectOf(exercise, naming);
  return {
    text: say(foreign.length === 1 ? 'heard-foreign-one' : 'heard-foreign-many', { notes, subject }),
    tryThis,
  };
}

/** The first note of a line that went otherwise: "After B comes C; C♯ was heard." */
function lineText({ exercise, verdict, naming }: Slipped): string {
  if (verdict.heard?.kind !== 'line') return say('heard-other-line');
  const { after, expected, sounded } = verdict.heard;
  const name = (pitch: number | undefined) =>
    pitch === undefined ? '' : nameOf(pitchClass(pitch), naming, keyOf(exercise));
  const slots = {
    after: name(after),
    expected: name(expected),
    sounded: name(sounded),
    notes: name(sounded),
  };
  const isSameName = expected !== undefined && sounded !== undefined && slots.expected === slots.sounded;
  if (isSameName) return say('heard-octave', slots);
  if (exercise.kind === 'find' && expected !== undefined) return say('heard-asked', slots);
  if (after !== undefined && sounded === undefined) return say('heard-after-end', slots);
  if (after !== undefined) return say(expected === undefined ? 'heard-beyond' : 'heard-after', slots);
  if (sounded === undefined) return say(expected === undefined ? 'heard-other-line' : 'heard-not', slots);
  if (expected === undefined && toneOf(exercise, pitchClass(sounded)) !== undefined)
    return say('heard-other-octave', slots);
  if (expected === undefined)
    return say('heard-foreign-one', { ...slots, subject: subjectOf(exercise, naming) });
  const isOrdered =
    exercise.kind === 'scale' && exercise.order !== undefined && exercise.coverage === 'every-pitch';
  return say(isOrdered ? 'heard-start' : 'heard-instead', slots);
}

function orderTry({ exercise, answer: { heard } }: Slipped): string {
  if (exercise.kind !== 'scale' || heard?.kind !== 'line') return '';
  const [first] = heard.pitches;
  const isFromRoot = first !== undefined && pitchClass(first.pitch) === pitchClassOf(exercise.root);
  if (exercise.coverage === 'every-tone' && !isFromRoot) return say('order-from-root-try');
  return say(`order-${exercise.order ?? 'up'}-try`);
}

/** "third" of ♭3, "root" of 1, "bass" of what only a slash asks for. */
function toneWord(exercise: Exercise, degree: Degree): string {
  if (exercise.kind === 'build' && !chordDegrees(exercise.quality).includes(degree)) return 'bass';
  return numberIn(degree) === 1
    ? 'root'
    : known(intervalName(degree).split(' ').at(-1), 'a name of a degree');
}
