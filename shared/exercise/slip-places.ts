import { known } from '../lib/assert.ts';
import { toneDegrees } from '../theory/tone-sets.ts';
import { midiAt, pitchClassAt, stringNumbers, type Place } from '../theory/fretboard.ts';
import { noteOnDegree, pitchClassOn, type Degree } from '../theory/interval.ts';
import { formatName } from '../theory/naming.ts';
import { pitchClassOf } from '../theory/pitch.ts';
import type { Exercise } from './exercise.ts';
import { say, type Slots } from './messages.ts';
import { capital, fretsText, fretText, list, numberText, placeText, stringsText } from './phrases.ts';
import { toneAt, instrumentOf, rootsOn } from './roots.ts';
import { isWholeShift, shapeWord, type Slipped, type Words } from './slip-details.ts';
import { targetsOf, tonesNeeded } from './targets.ts';
import { twinsOf } from './twins.ts';
import type { Correction, SlipVerdict } from './verdict.ts';
import { scaleName, subjectOf } from './wording.ts';

/** The root that was placed at the fret which it has on the last string, and where it belongs. */
export function mappedRoot(exercise: Exercise, { corrections }: SlipVerdict): Correction | undefined {
  const last = known(stringNumbers(instrumentOf(exercise)).at(-1), 'last string');
  const mapped = rootsOn(exercise, last);
  return corrections.find(
    ({ from, to }) => toneAt(exercise, to) === '1' && mapped.some((spot) => spot.fret === from.fret),
  );
}

/** The fret is the one of the last string. */
export function lowStringMapWords({ exercise, verdict }: Slipped, slots: Slots): Words {
  const root = mappedRoot(exercise, verdict);
  const expected =
    root?.to ??
    targetsOf(exercise)
      .flatMap((target) => target.notes)
      .find((note) => note.degree === '1' && note.place.string === exercise.rootString)?.place;
  return {
    text: root
      ? say('low-string-map', { ...slots, fret: fretText(root.from) })
      : say('low-string-map-hung', slots),
    tryThis: expected ? say('low-string-map-try', { string: expected.string, fret: fretText(expected) }) : '',
  };
}

/** The other third came in. */
export function thirdWords({ exercise, answer, verdict, naming }: Slipped, tryFirst: string): Words {
  const side = verdict.cause === 'major-for-minor' ? 'high' : 'low';
  const third = verdict.corrections.find(({ to }) => ['3', 'b3'].includes(toneAt(exercise, to) ?? ''))?.to;
  const tryThird = third ? say('try', { place: placeText(third) }) : tryFirst;
  if (exercise.kind !== 'scale') return { text: say(`third-${side}`), tryThis: tryThird };
  const twins = twinsOf(exercise);
  const sounding = new Set<number>(answer.places.map((spot) => pitchClassAt(instrumentOf(exercise), spot)));
  const above = (degree: Degree) => pitchClassOn(exercise.root, degree);
  const heard =
    twins.find(({ degrees }) => degrees.every((degree) => sounding.has(above(degree)))) ?? twins[0];
  if (!heard?.scale) return { text: say(`third-${side}`), tryThis: tryThird };
  return {
    text: say(`scale-third-${side}`, { twin: scaleName(exercise.root, heard.scale, naming) }),
    tryThis: tryThird || say(`scale-third-${side}-try`),
  };
}

/** Where tones may lie anywhere they are missed by name, else by place. */
export function missingWords({ exercise, answer, verdict, naming }: Slipped, tryFirst: string): Words {
  if (answer.places.length === 0) return { text: say('missing-all'), tryThis: tryFirst };
  const isFree =
    (exercise.kind === 'scale' && exercise.coverage === 'every-tone') ||
    (exercise.kind === 'build' && exercise.voicing.kind === 'any');
  const lost = isFree ? missingDegrees(exercise, answer.places) : [];
  if (lost.length > 0) {
    const notes = lost
      .map((degree) => noteOnDegree(exercise.root, degree))
      .filter((note) => note !== undefined);
    const spot = nearestTo(
      answer.places,
      verdict.missing.filter((missing) => lost.some((degree) => degree === toneAt(exercise, missing))),
    );
    return {
      text: say(notes.length === 1 ? 'missing-name' : 'missing-names', {
        notes: list(notes.map((note) => formatName(note, naming))),
      }),
      tryThis: spot ? say('add', { place: placeText(spot) }) : '',
    };
  }
  const count = verdict.missing.length;
  const key = count === 0 ? 'missing-some' : count === 1 ? 'missing-one' : 'missing-many';
  return { text: say(key, { count: capital(numberText(count)) }), tryThis: tryFirst };
}

/** The place that lies nearest to what was given. */
function nearestTo(given: readonly Place[], spots: readonly Place[]): Place | undefined {
  const distance = (spot: Place) => Math.min(...given.map((other) => Math.abs(other.fret - spot.fret)));
  return [...spots].sort((a, b) => distance(a) - distance(b))[0];
}

function missingDegrees(exercise: Exercise, places: readonly Place[]): readonly Degree[] {
  const needed =
    exercise.kind === 'build'
      ? tonesNeeded(exercise)
      : exercise.kind === 'scale'
        ? toneDegrees(exercise.scale)
        : [];
  return needed.filter((degree) => !places.some((spot) => toneAt(exercise, spot) === degree));
}

/** One note too many: on a taken string, foreign, or a tone that is not asked for here. */
export function extraWords({ exercise, answer, verdict, naming }: Slipped, tryThis: string): Words {
  const subject = subjectOf(exercise, naming);
  const { places } = answer;
  const twice = places.find(
    (spot, index) =>
      exercise.kind === 'build' && places.findIndex((other) => other.string === spot.string) < index,
  );
  if (twice) return { text: say('two-on-a-string', { string: twice.string }), tryThis: say('keep-one') };
  const extra = verdict.marks.find((mark) => !mark.right)?.place;
  if (!extra) return { text: say('extra-note', { subject }), tryThis };
  const count = verdict.marks.filter((mark) => !mark.right).length;
  if (count > 1 && exercise.kind !== 'find')
    return {
      text: say('extra-notes', { count: capital(numberText(count)), subject }),
      tryThis: say('leave-out-all'),
    };
  const isForeign = toneAt(exercise, extra) === undefined;
  const key = exercise.kind === 'find' ? 'extra-find' : isForeign ? 'extra-foreign' : 'extra-unasked';
  return { text: say(key, { place: placeText(extra), subject }), tryThis };
}

/** The last resort: where it lies. */
export function otherPlaceWords({ exercise, answer, verdict, naming }: Slipped, tryFirst: string): Words {
  const [first] = verdict.corrections;
  const instrument = instrumentOf(exercise);
  if (exercise.kind === 'find') {
    const other = answer.places.find(
      (spot) => pitchClassAt(instrument, spot) !== pitchClassOf(exercise.root),
    );
    const expected = first?.to ?? nearest(exercise, other);
    return {
      text: other ? say('other-note', { place: placeText(other) }) : say('other-unasked'),
      tryThis: expected
        ? say('other-note-try', { root: formatName(exercise.root, naming), place: placeText(expected) })
        : '',
    };
  }
  if (first && isWholeShift(exercise, verdict)) {
    const by = first.from.fret - first.to.fret;
    const shape = shapeWord(exercise);
    return {
      text: say(by > 0 ? 'whole-moved-high' : 'whole-moved-low', { shape, by: fretsText(Math.abs(by)) }),
      tryThis: say(by > 0 ? 'move-down' : 'move-up', { by: fretsText(Math.abs(by)) }),
    };
  }
  const astray = verdict.marks.filter((mark) => !mark.right).map((mark) => mark.place);
  if (astray.length === 0) return { text: say('elsewhere'), tryThis: tryFirst };
  if (exercise.kind === 'scale' && astray.length > 1)
    return { text: say('elsewhere-notes', { count: capital(numberText(astray.length)) }), tryThis: tryFirst };
  const isOne = new Set(astray.map((spot) => spot.string)).size === 1;
  const key = isOne ? 'elsewhere-string' : 'elsewhere-strings';
  return { text: say(key, { strings: stringsText(astray) }), tryThis: tryFirst };
}

/** The right place whose pitch is nearest. */
function nearest(exercise: Exercise, from: Place | undefined): Place | undefined {
  const instrument = instrumentOf(exercise);
  const spots = targetsOf(exercise).flatMap((target) => target.notes.map((note) => note.place));
  if (!from) return spots[0];
  const distance = (spot: Place) => Math.abs(midiAt(instrument, spot) - midiAt(instrument, from));
  return spots.sort((a, b) => distance(a) - distance(b))[0];
}
