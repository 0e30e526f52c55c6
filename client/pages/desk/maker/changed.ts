import type { Finger, Voicing } from '../../../../shared/exercise/exercise.ts';
import type { StackedFamily } from '../../../../shared/theory/families.ts';
import {
  place,
  stringNumbers,
  type Fret,
  type InstrumentId,
  type StringNumber,
} from '../../../../shared/theory/fretboard.ts';
import { formatNoteName, type NoteName } from '../../../../shared/theory/pitch.ts';
import { shapesOnString } from '../../../../shared/theory/shapes.ts';
import { shapeAt } from '../../../../shared/theory/shape.ts';
import { formTable, type FormId } from '../../../../shared/theory/tables/forms.ts';
import { toneDegrees, type ToneSetId } from '../../../../shared/theory/tone-sets.ts';
import { instrumentOf, problemOf, rootFrets, type Draft } from './draft.ts';

/** The movable forms of the chord with a root on its string, as far as the instrument's tuning makes them. */
export function formsFor(draft: Draft): readonly FormId[] {
  const { quality, rootString, root } = draft;
  const neck = instrumentOf(draft);
  return formTable
    .filter((row) => row.quality === quality && row.rootStrings.includes(rootString))
    .filter((row) =>
      rootFrets(draft).some((fret) => shapeAt(neck, row, root, place(rootString, fret)) !== undefined),
    )
    .map((row) => row.form);
}

/** Ways of stacking the chord's tones with a root on its string, and the strings that take them. */
export function familiesFor(draft: Draft): readonly (Voicing & { kind: 'family' })[] {
  const forms = formsFor(draft);
  const found = new Map<string, Voicing & { kind: 'family' }>();
  for (const { family, notes } of shapesOnString(
    instrumentOf(draft),
    draft,
    draft.rootString,
    stackedFamilies,
  )) {
    const strings = notes.map(({ place: { string } }) => string);
    const key = `${family}-${strings.join('')}`;
    // The triads on the highest strings are forms of the table.
    if (family !== 'form' && !forms.some((form) => form === key))
      found.set(key, { kind: 'family', family, strings });
  }
  return [...found.values()];
}

const stackedFamilies: readonly StackedFamily[] = ['triad', 'shell', 'drop-2', 'drop-3'];

/** The frets to choose the place from: those at which the exercise can be asked, and the one chosen. */
export function placesToChoose(draft: Draft): readonly Fret[] {
  return rootFrets(draft).filter(
    (rootFret) => rootFret === draft.rootFret || problemOf({ ...draft, rootFret }) === null,
  );
}

/**
 * The draft with something changed, and whatever hangs on it set to what makes sense: a form that exists, the
 * lowest fret that can be asked. What the teacher chose stays wherever it still fits.
 */
export function changed(draft: Draft, change: Partial<Draft>): Draft {
  let next = { ...draft, ...change };
  if (change.instrument !== undefined) next = onNeck(next);
  if (change.root && draft.bass && sameName(draft.bass, draft.root)) next = { ...next, bass: change.root };
  if (change.kind !== undefined && change.kind !== draft.kind)
    next = { ...next, strictness: change.kind === 'find' ? 'string' : 'place' };
  if (change.scale !== undefined && change.scale !== draft.scale)
    next = { ...next, rootFinger: usualFinger(change.scale) };
  if (change.oneString) next = { ...next, strictness: 'range' };
  else if (next.oneString && (next.coverage === 'every-tone' || next.strictness !== 'range'))
    next = { ...next, oneString: false };
  if (change.perString && next.strictness !== 'place') next = { ...next, strictness: 'string' };
  else if (next.perString && (next.coverage === 'every-tone' || hasNoRootString(next)))
    next = { ...next, perString: null };
  if (next.kind === 'build') next = withFittingVoicing(next, draft, change);
  if (movesPlace(change) && next.strictness === 'place') next = withFittingFret(next, draft);
  const asksAnew = change.asksFinger === true || movesPlace(change);
  if (next.asksFinger && asksAnew && change.strictness === undefined) next = withKnownFinger(next);
  return change.asksFinger === undefined ? withoutOpenFinger(next) : next;
}

function hasNoRootString({ strictness }: Draft): boolean {
  return strictness === 'range' || strictness === 'anywhere';
}

/** The draft on the group's instrument: where a new exercise starts from one that was on another. */
export function onInstrument(draft: Draft, instrument: InstrumentId): Draft {
  return draft.instrument === instrument ? draft : changed(draft, { instrument });
}

/** Whether a change may leave the place without what is asked. */
function movesPlace(change: Partial<Draft>): boolean {
  if (change.rootFret !== undefined) return false;
  const { kind, instrument, root, rootString, strictness, quality, bass } = change;
  const { voicing, form, scale, perString, oneString, rootFinger } = change;
  return [
    kind,
    instrument,
    root,
    rootString,
    strictness,
    quality,
    bass,
    voicing,
    form,
    scale,
    perString,
    oneString,
    rootFinger,
  ].some((field) => field !== undefined);
}

/** On another instrument strings and frets that it lacks give way. */
function onNeck(draft: Draft): Draft {
  const neck = instrumentOf(draft);
  const numbers = stringNumbers(neck);
  const fret = (wanted: Fret) => Math.min(wanted, neck.fretCount) as Fret;
  const strings = draft.strings.filter((string) => numbers.includes(string));
  return {
    ...draft,
    rootString: Math.min(draft.rootString, numbers.length) as StringNumber,
    range: { low: fret(draft.range.low), high: fret(draft.range.high) },
    namedFret: fret(draft.namedFret),
    strings: strings.length > 0 ? strings : numbers.slice(0, 3).reverse(),
  };
}

/** The finger that takes a root on string 2 in the usual position (common practice: major 2, minor 1). */
function usualFinger(scale: ToneSetId): Finger {
  return toneDegrees(scale).includes('3') ? 2 : 1;
}

/** A form that the chord has on this string; without one any shape. Where the shape was any by that, a form again. */
function withFittingVoicing(draft: Draft, before: Draft, change: Partial<Draft>): Draft {
  // A form has a lowest note of its own.
  if (change.voicing === 'form' || change.voicing === 'family') return { ...draft, bass: null };
  if (change.voicing !== undefined) return draft;
  if (change.bass && (draft.voicing === 'form' || draft.voicing === 'family'))
    return { ...draft, voicing: 'any', strictness: 'string' };
  const forms = formsFor(draft);
  const form = forms.includes(draft.form) ? draft.form : forms[0];
  if (draft.voicing === 'family') return withFittingFamily(draft, form);
  if (draft.voicing === 'form')
    return form ? { ...draft, form } : { ...draft, voicing: 'any', strictness: 'string' };
  const hadNone = draft.voicing === 'any' && formsFor(before).length === 0;
  return hadNone && form ? { ...draft, voicing: 'form', form, strictness: 'place' } : draft;
}

/** The same family on the same strings where it goes on fitting, else on others, else the form. */
function withFittingFamily(draft: Draft, form: FormId | undefined): Draft {
  const same = familiesFor(draft).filter(({ family }) => family === draft.family);
  const key = draft.strings.join('');
  const next = same.find(({ strings }) => strings.join('') === key) ?? same[0];
  if (next) return { ...draft, family: next.family, strings: next.strings };
  return form ? { ...draft, voicing: 'form', form } : { ...draft, voicing: 'any', strictness: 'string' };
}

/** The finger on the root can be asked where it is given: in a form, or in the four frets that a hand covers. */
function withKnownFinger(draft: Draft): Draft {
  if (draft.kind === 'build') {
    const [form] = draft.voicing === 'form' ? [draft.form] : formsFor(draft);
    return form
      ? withFittingFret({ ...draft, voicing: 'form', form, bass: null, strictness: 'place' }, draft)
      : draft;
  }
  if (draft.kind !== 'scale') return draft;
  const hands = rootFrets(draft)
    .map((fret) => fret - draft.rootFinger + 1)
    .map((low): Draft => {
      const range = { low: low as Fret, high: (low + handFrets - 1) as Fret };
      return { ...draft, strictness: 'range', range };
    });
  return hands.find((hand) => problemOf(hand) === null) ?? draft;
}

/** Where another choice leaves the finger open, it isn't asked any more. */
function withoutOpenFinger(draft: Draft): Draft {
  if (!draft.asksFinger || problemOf(draft) === null) return draft;
  const without = { ...draft, asksFinger: false };
  return problemOf(without) === null ? without : draft;
}

function sameName(a: NoteName, b: NoteName): boolean {
  return formatNoteName(a) === formatNoteName(b);
}

/** One finger a fret. */
const handFrets = 4;

function withFittingFret(draft: Draft, before: Draft): Draft {
  const frets = rootFrets(draft);
  const candidates = frets.includes(before.rootFret) ? [before.rootFret, ...frets] : frets;
  const fret = candidates.find((rootFret) => problemOf({ ...draft, rootFret }) === null) ?? candidates[0];
  return fret === undefined ? draft : { ...draft, rootFret: fret };
}
