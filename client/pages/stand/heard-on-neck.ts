import type { Answer } from '../../../shared/exercise/answer.ts';
import type { HeardTone, Playing } from '../../../shared/exercise/heard.ts';
import type { Instrument } from '../../../shared/theory/fretboard.ts';
import { heardMarks, placesSounding } from '../../fretboard/heard-marks.ts';
import type { HeardMark } from '../../fretboard/state.ts';
import { nextTap } from './heard-answer.ts';
import { keyInWords } from './key-in-words.ts';
import { startsOnRoot } from './play-words.ts';

/**
 * What is drawn on the neck of what was heard. Where the root is to be tapped and the line started on it, its places are
 * those to choose from. `title`: the task's English one.
 */
export function heardOnNeck(
  instrument: Instrument,
  answer: Answer,
  hint: readonly HeardTone[],
  playing: Playing,
  title: string,
): readonly HeardMark[] {
  const { heard } = answer;
  const first = heard?.kind === 'line' ? heard.pitches[0]?.pitch : undefined;
  const isAsked = nextTap(answer, playing) === 'root' && startsOnRoot(answer, { key: keyInWords(title) });
  const candidates = isAsked && first !== undefined ? placesSounding(instrument, first) : [];
  return heardMarks(instrument, heard, hint, candidates);
}
