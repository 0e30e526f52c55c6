import { checkExercise } from '../../../../shared/exercise/check.ts';
import type {
  Exercise,
  ExerciseKind,
  Finger,
  NameExercise,
  ScaleExercise,
  ScaleOrder,
  Strictness,
  Voicing,
} from '../../../../shared/exercise/exercise.ts';
import type { StackedFamily } from '../../../../shared/theory/families.ts';
import {
  instrumentById,
  pitchClassAt,
  place,
  standardGuitar,
  type Fret,
  type FretRange,
  type Instrument,
  type InstrumentId,
  type Place,
  type StringNumber,
} from '../../../../shared/theory/fretboard.ts';
import { pitchClassOf, type NoteName } from '../../../../shared/theory/pitch.ts';
import type { ChordQuality } from '../../../../shared/theory/tables/chords.ts';
import type { FormId } from '../../../../shared/theory/tables/forms.ts';
import type { PatternChoice } from '../../../../shared/theory/patterns.ts';
import { rootPlaces } from '../../../../shared/theory/root-places.ts';
import type { ToneSetId } from '../../../../shared/theory/tone-sets.ts';
import { usualRoots } from './words.ts';

/**
 * An exercise in the making. It keeps what every kind needs, so that going from one kind to another and back
 * loses nothing; `exerciseOf` takes out what counts.
 */
export interface Draft {
  readonly kind: ExerciseKind;
  readonly instrument: InstrumentId;
  readonly root: NoteName;
  /** For _name_ the string of the place. */
  readonly rootString: StringNumber;
  readonly strictness: Strictness;
  /** The root's fret where the strictness is `place`. */
  readonly rootFret: Fret;
  /** The frets where the strictness is `range`, or `string` and `narrow`. */
  readonly range: FretRange;
  /** Whether a strictness of `string` is narrowed to the range. */
  readonly narrow: boolean;
  /** _Find_: every place that is accepted, not just one. */
  readonly every: boolean;
  /** _Name_: the fret of the place, and what it is to be called. */
  readonly namedFret: Fret;
  readonly named: NameExercise['wanted'];
  readonly quality: ChordQuality;
  readonly bass: NoteName | null;
  readonly voicing: Voicing['kind'];
  readonly form: FormId;
  readonly family: StackedFamily;
  readonly full: boolean;
  readonly strings: readonly StringNumber[];
  readonly scale: ToneSetId;
  /** So many notes on every string, instead of a position of the hand. */
  readonly perString: PatternChoice | null;
  /** Along the root string alone. */
  readonly oneString: boolean;
  readonly coverage: ScaleExercise['coverage'];
  readonly order: ScaleOrder | null;
  readonly rootFinger: Finger;
  readonly marksRoot: boolean;
  readonly asksFinger: boolean;
  readonly seconds: number | null;
}

/** Whether the exercise can be asked, or why not in a sentence. */
export function problemOf(draft: Draft): string | null {
  const checked = checkExercise(exerciseOf(draft));
  return checked.ok ? null : checked.error;
}

export function instrumentOf({ instrument }: Pick<Draft, 'instrument'>): Instrument {
  return instrumentById(instrument) ?? standardGuitar;
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
    every: false,
    namedFret: 3 as Fret,
    named: 'note',
    quality: 'minor',
    bass: null,
    voicing: 'form',
    form: 'triad-321',
    family: 'triad',
    full: false,
    strings: [3, 2, 1] as StringNumber[],
    scale: 'minor-pentatonic',
    perString: null,
    oneString: false,
    coverage: 'every-pitch',
    order: null,
    rootFinger: 1,
    marksRoot: false,
    asksFinger: false,
    seconds: null,
  };
}

/** The exercise as the draft stands, whether or not it can be asked. */
export function exerciseOf(draft: Draft): Exercise {
  const { kind, instrument, root, rootString, strictness } = draft;
  const task = { instrument, root, rootString, strictness, range: rangeOf(draft) };
  switch (kind) {
    case 'find':
      return { kind, ...task, ...(draft.every ? { wanted: 'every' } : {}) };
    case 'name':
      return {
        kind,
        ...task,
        ...(draft.named === 'note' ? { root: noteAt(draft) } : {}),
        strictness: 'place',
        range: { low: draft.namedFret, high: draft.namedFret },
        place: namedPlace(draft),
        wanted: draft.named,
      };
    case 'build':
      return {
        kind,
        ...task,
        ...extrasOf(draft),
        quality: draft.quality,
        ...(draft.bass ? { bass: draft.bass } : {}),
        voicing: voicingOf(draft),
      };
    case 'scale':
      return {
        kind,
        ...task,
        ...extrasOf(draft),
        scale: draft.scale,
        ...(draft.perString ? { perString: draft.perString } : {}),
        ...(draft.oneString ? { oneString: true } : {}),
        coverage: draft.coverage,
        ...(draft.order ? { order: draft.order } : {}),
        rootFinger: draft.rootFinger,
      };
  }
}

function extrasOf({ marksRoot, asksFinger }: Draft) {
  return { ...(marksRoot ? { marksRoot } : {}), ...(asksFinger ? { asksFinger } : {}) };
}

export function namedPlace({ rootString, namedFret }: Draft): Place {
  return place(rootString, namedFret);
}

/** The note at the place that is to be named; written as the draft's root where that is the same note. */
export function noteAt(draft: Draft): NoteName {
  const sounding = pitchClassAt(instrumentOf(draft), namedPlace(draft));
  const names = [draft.root, ...usualRoots].filter((name) => pitchClassOf(name) === sounding);
  return names[0] ?? draft.root;
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

function voicingOf({ voicing, form, family, full, strings }: Draft): Voicing {
  switch (voicing) {
    case 'form':
      return { kind: 'form', form, full };
    case 'family':
      return { kind: 'family', family, strings };
    case 'strings':
      return { kind: 'strings', strings };
    case 'any':
      return { kind: 'any' };
  }
}

/** The frets at which the root lies on its string, lowest first. */
export function rootFrets(draft: Draft): readonly Fret[] {
  const neck = instrumentOf(draft);
  if (draft.rootString > neck.openStrings.length) return [];
  return rootPlaces(neck, draft.root, draft.rootString).map(({ fret }) => fret);
}
