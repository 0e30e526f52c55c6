import type { Answer } from '../../../shared/exercise/answer.ts';
import type { Heard, HeardTone, Playing, Way } from '../../../shared/exercise/heard.ts';
import { holds, type Place } from '../../../shared/theory/fretboard.ts';
import type { EarEvent } from '../../listening/events.ts';

/** What is heard → an answer. Pure: a draft comes in, the next one goes out. */

/** What listening for one answer has come to. */
export interface PlayDraft {
  readonly answer: Answer;
  /** Tones before their verdict: shown, not placed. */
  readonly hint: readonly HeardTone[];
  /** When the hint's stroke began. */
  readonly hintOnset: number;
  /** Not all of the chord was clear. */
  readonly isDoubtful: boolean;
  /** When the line's first note sounded, by the ear's clock in seconds; null until this listening took one. */
  readonly start: number | null;
  /** The onset that the line took last, by the same clock. */
  readonly lastOnset: number | null;
}

export function draftOf(answer: Answer): PlayDraft {
  return { answer, hint: [], hintOnset: 0, isDoubtful: false, start: null, lastOnset: null };
}

/** The answer was changed by another hand: a tap, Again, another round. */
export function withAnswer(draft: PlayDraft, answer: Answer): PlayDraft {
  return answer.heard ? { ...draft, answer } : { ...draftOf(answer), lastOnset: draft.lastOnset };
}

/** Listening begins anew, and its clock with it. */
export function newListening(draft: PlayDraft): PlayDraft {
  return { ...draft, hint: [], start: null, lastOnset: null };
}

/** Two notes of a line don't start closer together than this, in seconds: it is the same one, told again. */
const sameOnset = 0.03;
/** As many as travel in one answer. */
export const mostPitches = 120;
/** As late as a note may be, in milliseconds. */
const latest = 4_000_000;
/** A hint whose verdict stays away goes after so long, in seconds. */
const hintLasts = 1;
/** What another listening adds to a line comes so long after it, in milliseconds. */
const pauseBetween = 1000;

/** After something was heard; the same draft where that changes nothing. */
export function afterHeard(draft: PlayDraft, event: EarEvent, { as }: Playing): PlayDraft {
  if (event.kind === 'note' && as === 'line') return withNote(draft, event);
  if (event.kind === 'level' && draft.hint.length > 0 && event.at - draft.hintOnset > hintLasts)
    return { ...draft, hint: [] };
  if (event.kind === 'chord' && as === 'chord') return withChord(draft, event);
  return draft;
}

type NoteEvent = Extract<EarEvent, { readonly kind: 'note' }>;
type ChordEvent = Extract<EarEvent, { readonly kind: 'chord' }>;

function withNote(draft: PlayDraft, { onset, pitch, confidence }: NoteEvent): PlayDraft {
  const { answer, lastOnset } = draft;
  const before = answer.heard?.kind === 'line' ? answer.heard.pitches : [];
  const isTold = lastOnset !== null && onset - lastOnset < sameOnset;
  if (isTold || before.length >= mostPitches) return draft;
  const last = before.at(-1);
  const start = draft.start ?? onset - (last ? (last.at + pauseBetween) / 1000 : 0);
  const at = Math.min(latest, Math.round((onset - start) * 1000));
  const heard: Heard = { kind: 'line', pitches: [...before, { pitch, at, confidence }] };
  return { ...draft, answer: withHeard(answer, heard, 'play'), start, lastOnset: onset };
}

/** The newest verdict counts; of one arpeggio each tells all tones so far, with the onset of its first. */
function withChord(draft: PlayDraft, { onset, tones, faint, isFinal, isDoubtful }: ChordEvent): PlayDraft {
  // A string that rings on is no new chord yet.
  if (!isFinal)
    return tones.length < 2 && draft.answer.heard ? draft : { ...draft, hint: tones, hintOnset: onset };
  const settled = { ...draft, hint: [] };
  if (tones.length === 0) return settled;
  const heard: Heard = { kind: 'chord', tones, ...(faint.length > 0 ? { faint } : {}) };
  return { ...settled, answer: withHeard(draft.answer, heard, 'play'), isDoubtful };
}

/** What an instrument told by MIDI: the places, where it tells its strings; a root mark stays on its place. */
export function withMidi(answer: Answer, places: readonly Place[] | null, heard: Heard): Answer {
  if (!places) return withHeard(answer, heard, 'midi');
  const { heard: _heard, root, ...rest } = answer;
  return { ...rest, places, ...(root && holds(places, root) ? { root } : {}), way: 'midi' };
}

/** What was placed before anything was heard is replaced; taps for what was heard stay. */
export function withHeard(answer: Answer, heard: Heard, way: Way): Answer {
  const { root: _root, places, ...rest } = answer;
  return { ...rest, places: answer.heard ? places : [], heard, way };
}
