import { checkExercise } from '../../../../shared/exercise/check.ts';
import type {
  Exercise,
  ExerciseKind,
  Finger,
  ScaleExercise,
  Strictness,
  Voicing,
} from '../../../../shared/exercise/exercise.ts';
import {
  instrumentById,
  pitchClassAt,
  place,
  type Fret,
  type FretRange,
  type InstrumentId,
  type StringNumber,
} from '../../../../shared/theory/fretboard.ts';
import { pitchClassOf, type NoteName } from '../../../../shared/theory/pitch.ts';
import type { ChordQuality } from '../../../../shared/theory/tables/chords.ts';
import { formTable, type FormId } from '../../../../shared/theory/tables/forms.ts';
import type { ScaleId } from '../../../../shared/theory/tables/scales.ts';
import { known } from '../../../../shared/lib/assert.ts';

/**
 * An exercise in the making. It keeps what every kind needs, so that going from one kind to another and back
 * loses nothing; `exerciseOf` takes out what counts.
 */
export interface Draft {
  readonly kind: ExerciseKind;
  readonly instrument: InstrumentId;
  readonly root: NoteName;
  readonly rootString: StringNumber;
  readonly strictness: Strictness;
  /** The root's fret where the strictness is `place`. */
  readonly rootFret: Fret;
  /** The frets where the strictness is `range`, or `string` and `narrow`. */
  readonly range: FretRange;
  /** Whether a strictness of `string` is narrowed to the range. */
  readonly narrow: boolean;
  readonly quality: ChordQuality;
  readonly voicing: Voicing['kind'];
  readonly form: FormId;
  readonly full: boolean;
  readonly strings: readonly StringNumber[];
  readonly scale: ScaleId;
  readonly coverage: ScaleExercise['coverage'];
  readonly rootFinger: Finger;
  readonly seconds: number | null;
}

/** Whether the exercise can be asked, or why not in a sentence. */
export function problemOf(draft: Draft): string | null {
  const checked = checkExercise(exerciseOf(draft));
  return checked.ok ? null : checked.error;
}

/** Where a teacher starts: find D on string 2. */
export function firstDraft(instrument: InstrumentId): Draft {
  return {
    kind: 'find',
    instrument,
    root: { letter: 'D', alteration: 0 },
    rootString: 2 as StringNumber,
    strictness: 'string',
    rootFret: 3 as Fret,
    range: { low: 0 as Fret, high: 12 as Fret },
    narrow: false,
    quality: 'minor',
    voicing: 'form',
    form: 'triad-321',
    full: false,
    strings: [3, 2, 1] as StringNumber[],
    scale: 'minor-pentatonic',
    coverage: 'every-pitch',
    rootFinger: 1,
    seconds: null,
  };
}

/** The exercise as the draft stands, whether or not it can be asked. */
export function exerciseOf(draft: Draft): Exercise {
  const { instrument, root, rootString, strictness } = draft;
  const task = { instrument, root, rootString, strictness, range: rangeOf(draft) };
  switch (draft.kind) {
    case 'find':
      return { kind: 'find', ...task };
    case 'build':
      return { kind: 'build', ...task, quality: draft.quality, voicing: voicingOf(draft) };
    case 'scale':
      return {
        kind: 'scale',
        ...task,
        scale: draft.scale,
        coverage: draft.coverage,
        rootFinger: draft.rootFinger,
      };
  }
}

function rangeOf(draft: Draft): FretRange | null {
  switch (draft.strictness) {
    case 'place':
      return { low: draft.rootFret, high: draft.rootFret };
    case 'string':
      return draft.narrow ? draft.range : null;
    case 'range':
      return draft.range;
    case 'anywhere':
      return null;
  }
}

function voicingOf({ voicing, form, full, strings }: Draft): Voicing {
  switch (voicing) {
    case 'form':
      return { kind: 'form', form, full };
    case 'strings':
      return { kind: 'strings', strings };
    case 'any':
      return { kind: 'any' };
  }
}

/** A draft that makes this exercise again. */
export function draftOf(exercise: Exercise, seconds: number | null): Draft {
  const first = firstDraft(exercise.instrument);
  const { kind, root, rootString, strictness, range } = exercise;
  const draft: Draft = {
    ...first,
    kind,
    root,
    rootString,
    strictness,
    range: range && strictness !== 'place' ? range : first.range,
    narrow: strictness === 'string' && range !== null,
    seconds,
  };
  const placed: Draft = { ...draft, rootFret: rootFretIn(draft, range) };
  switch (exercise.kind) {
    case 'find':
      return placed;
    case 'build': {
      const { quality, voicing } = exercise;
      const form = voicing.kind === 'form' ? voicing : { form: first.form, full: first.full };
      const strings = voicing.kind === 'strings' ? voicing.strings : first.strings;
      return { ...placed, quality, voicing: voicing.kind, form: form.form, full: form.full, strings };
    }
    case 'scale': {
      const { scale, coverage, rootFinger } = exercise;
      return { ...placed, scale, coverage, rootFinger };
    }
  }
}

function rootFretIn(draft: Draft, range: FretRange | null): Fret {
  const frets = rootFrets(draft);
  return (
    frets.find((fret) => range !== null && fret >= range.low && fret <= range.high) ??
    frets[0] ??
    draft.rootFret
  );
}

/** The frets at which the root lies on its string, lowest first. */
export function rootFrets({ instrument, root, rootString }: Draft): readonly Fret[] {
  const neck = known(instrumentById(instrument), `instrument ${instrument}`);
  const wanted = pitchClassOf(root);
  return Array.from({ length: neck.fretCount + 1 }, (_, fret) => fret as Fret).filter(
    (fret) => pitchClassAt(neck, place(rootString, fret)) === wanted,
  );
}

/** The movable forms of a quality with a root on this string. */
export function formsFor(quality: ChordQuality, rootString: StringNumber): readonly FormId[] {
  return formTable
    .filter((row) => row.quality === quality && row.rootStrings.includes(rootString))
    .map((row) => row.form);
}

/**
 * The draft with something changed, and whatever hangs on it set to what makes sense: a form that exists, the
 * lowest fret that can be asked. What the teacher chose stays wherever it still fits.
 */
export function changed(draft: Draft, change: Partial<Draft>): Draft {
  let next = { ...draft, ...change };
  if (change.kind !== undefined && change.kind !== draft.kind) {
    next = { ...next, strictness: change.kind === 'find' ? 'string' : 'place' };
  }
  if (change.scale !== undefined && change.scale !== draft.scale) {
    next = { ...next, rootFinger: usualFinger(change.scale) };
  }
  next = withFittingForm(next, change.form !== undefined);
  if (movesPlace(change) && next.strictness === 'place') next = withFittingFret(next, draft);
  return next;
}

/** Whether a change may leave the place without what is asked. */
function movesPlace(change: Partial<Draft>): boolean {
  if (change.rootFret !== undefined) return false;
  const { kind, root, rootString, strictness, quality, voicing, form, scale, rootFinger } = change;
  return [kind, root, rootString, strictness, quality, voicing, form, scale, rootFinger].some(
    (field) => field !== undefined,
  );
}

/** The frets to choose the place from: those at which the exercise can be asked, and the one chosen. */
export function placesToChoose(draft: Draft): readonly Fret[] {
  return rootFrets(draft).filter(
    (rootFret) => rootFret === draft.rootFret || problemOf({ ...draft, rootFret }) === null,
  );
}

/** The finger that takes a root on string 2 in the usual position (common practice: major 2, minor 1). */
function usualFinger(scale: ScaleId): Finger {
  return scale === 'major' || scale === 'major-pentatonic' ? 2 : 1;
}

function withFittingForm(draft: Draft, chosen: boolean): Draft {
  const forms = formsFor(draft.quality, draft.rootString);
  if (draft.voicing !== 'form' || forms.includes(draft.form) || chosen) return draft;
  const [form] = forms;
  return form ? { ...draft, form } : { ...draft, voicing: 'any', strictness: 'string' };
}

function withFittingFret(draft: Draft, before: Draft): Draft {
  const frets = rootFrets(draft);
  const candidates = frets.includes(before.rootFret) ? [before.rootFret, ...frets] : frets;
  const fret = candidates.find((rootFret) => problemOf({ ...draft, rootFret }) === null) ?? candidates[0];
  return fret === undefined ? draft : { ...draft, rootFret: fret };
}
