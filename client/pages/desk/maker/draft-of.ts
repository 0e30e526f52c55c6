import type { Exercise } from '../../../../shared/exercise/exercise.ts';
import {
  instrumentById,
  standardGuitar,
  stringNumbers,
  type Fret,
  type FretRange,
  type InstrumentId,
  type StringNumber,
} from '../../../../shared/theory/fretboard.ts';
import { firstDraft, rootFrets, type Draft } from './draft.ts';

/** A draft that makes this exercise again. */
export function draftOf(exercise: Exercise, seconds: number | null): Draft {
  const first = firstDraft(exercise.instrument);
  const { kind, instrument, root, rootString, strictness, range } = exercise;
  const draft: Draft = {
    ...first,
    kind,
    instrument,
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
      return { ...placed, every: exercise.wanted === 'every' };
    case 'name':
      return { ...placed, namedFret: exercise.place.fret, named: exercise.wanted };
    case 'build': {
      const { quality, voicing, bass = null, marksRoot = false, asksFinger = false } = exercise;
      const form = voicing.kind === 'form' ? voicing : first;
      const strings = 'strings' in voicing ? voicing.strings : highest(exercise.instrument);
      const { family } = voicing.kind === 'family' ? voicing : first;
      const { full } = form;
      return {
        ...placed,
        quality,
        bass,
        voicing: voicing.kind,
        form: form.form,
        family,
        full,
        strings,
        marksRoot,
        asksFinger,
      };
    }
    case 'scale': {
      const { scale, coverage, rootFinger, perString = null, oneString = false, order = null } = exercise;
      const { marksRoot = false, asksFinger = false } = exercise;
      return { ...placed, scale, coverage, rootFinger, perString, oneString, order, marksRoot, asksFinger };
    }
  }
}

/** The three highest strings, lowest first: where a set of strings starts from. */
function highest(instrument: InstrumentId): readonly StringNumber[] {
  return stringNumbers(instrumentById(instrument) ?? standardGuitar)
    .slice(0, 3)
    .reverse();
}

function rootFretIn(draft: Draft, range: FretRange | null): Fret {
  const frets = rootFrets(draft);
  return (
    frets.find((fret) => range !== null && fret >= range.low && fret <= range.high) ??
    frets[0] ??
    draft.rootFret
  );
}
