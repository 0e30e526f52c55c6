import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  afterHeard,
  draftOf,
  newListening,
  withAnswer,
  type PlayDraft,
} from '../../../client/pages/stand/play-draft.ts';
import { heardCount, nextTap, tappedFor, tapsAlone } from '../../../client/pages/stand/heard-answer.ts';
import type { EarEvent } from '../../../client/listening/events.ts';
import { noAnswer, type Answer } from '../../../shared/exercise/answer.ts';
import type { HeardTone, Playing } from '../../../shared/exercise/heard.ts';
import { heardSchema } from '../../../shared/protocol/schemas.ts';
import { place } from '../../../shared/theory/fretboard.ts';
import type { MidiNote, PitchClass } from '../../../shared/theory/pitch.ts';
import * as v from 'valibot';

const line: Playing = { as: 'line', taps: ['root'] };
const chord: Playing = { as: 'chord', taps: ['root', 'lowest'] };

const note = (onset: number, pitch: number): EarEvent => ({
  kind: 'note',
  at: onset + 0.11,
  onset,
  pitch: pitch as MidiNote,
  cents: 2,
  confidence: 0.9,
});
const tones = (...classes: readonly number[]): readonly HeardTone[] =>
  classes.map((pitchClass) => ({ pitchClass: pitchClass as PitchClass, confidence: 0.9 }));
const struck = (
  onset: number,
  isFinal: boolean,
  heard: readonly HeardTone[],
  isDoubtful = false,
): EarEvent => ({
  kind: 'chord',
  at: onset + (isFinal ? 0.4 : 0.25),
  onset,
  isFinal,
  tones: heard,
  faint: [],
  isDoubtful,
});
const after = (draft: PlayDraft, playing: Playing, ...events: readonly EarEvent[]) =>
  events.reduce((before, event) => afterHeard(before, event, playing), draft);
const pitches = ({ answer: { heard } }: PlayDraft) =>
  heard?.kind === 'line' ? heard.pitches.map(({ pitch, at }) => [pitch, at]) : null;

describe('a line that is heard', () => {
  it('grows note by note, with milliseconds since its first', () => {
    const draft = after(draftOf(noAnswer), line, note(3.2, 60), note(3.7, 62), note(4.2004, 62));
    expect(pitches(draft)).toEqual([
      [60, 0],
      [62, 500],
      [62, 1000],
    ]);
    expect(draft.answer).toMatchObject({ places: [], way: 'play' });
  });

  it('takes no onset twice, nor one that is older', () => {
    const draft = after(draftOf(noAnswer), line, note(3.2, 60));
    expect(afterHeard(draft, note(3.2, 60), line)).toBe(draft);
    expect(afterHeard(draft, note(3.21, 72), line)).toBe(draft);
    expect(afterHeard(draft, note(1, 55), line)).toBe(draft);
  });

  it('goes on in another listening, whose clock begins anew', () => {
    const before = after(draftOf(noAnswer), line, note(70, 60), note(70.5, 62));
    const on = after(newListening(before), line, note(0.4, 64), note(0.9, 65));
    expect(pitches(on)?.map(([, at]) => at)).toEqual([0, 500, 1500, 2000]);
  });

  it('goes on with what this device kept over a reload', () => {
    const kept: Answer = {
      places: [],
      heard: { kind: 'line', pitches: [{ pitch: 60 as MidiNote, at: 0, confidence: 1 }] },
      way: 'play',
    };
    expect(pitches(after(draftOf(kept), line, note(2, 62)))?.map(([, at]) => at)).toEqual([0, 1000]);
  });

  it('takes no chord, and a chord no note', () => {
    const draft = draftOf(noAnswer);
    expect(afterHeard(draft, struck(1, true, tones(0, 4, 7)), line)).toBe(draft);
    expect(afterHeard(draft, note(1, 60), chord)).toBe(draft);
    const quiet: EarEvent = { kind: 'level', at: 1, loudness: -30, floor: -60, clipped: false };
    expect(afterHeard(draft, quiet, line)).toBe(draft);
    expect(afterHeard(draft, { kind: 'struck', at: 1, onset: 1 }, chord)).toBe(draft);
  });

  it('is always what may travel, whatever is heard and for however long', () => {
    const heard = fc.array(
      fc.record({
        gap: fc.double({ min: 0, max: 3000, noNaN: true }),
        pitch: fc.integer({ min: 0, max: 127 }),
      }),
      { minLength: 1, maxLength: 200 },
    );
    fc.assert(
      fc.property(heard, (all) => {
        let onset = 1;
        const draft = all.reduce((before, { gap, pitch }) => {
          onset += gap;
          return afterHeard(before, note(onset, pitch), line);
        }, draftOf(noAnswer));
        expect(v.safeParse(heardSchema, draft.answer.heard).success).toBe(true);
        const times = pitches(draft)?.map(([, at]) => at ?? 0) ?? [];
        expect(times).toEqual(times.toSorted((a, b) => a - b));
      }),
    );
  });
});

describe('a chord that is heard', () => {
  it('shows a hint at once and places it with the verdict', () => {
    const hinted = after(draftOf(noAnswer), chord, struck(1, false, tones(9, 4)));
    expect(hinted.answer).toBe(noAnswer);
    expect(hinted.hint).toEqual(tones(9, 4));
    const final = afterHeard(hinted, struck(1, true, tones(9, 1, 4)), chord);
    expect(final).toMatchObject({ hint: [], isDoubtful: false });
    expect(final.answer).toEqual({
      places: [],
      heard: { kind: 'chord', tones: tones(9, 1, 4) },
      way: 'play',
    });
  });

  it('is the newest one; of an arpeggio all tones so far, with the onset of its first', () => {
    const first = after(draftOf(noAnswer), chord, struck(1, true, tones(9, 0, 4)));
    const second = after(first, chord, struck(3, true, tones(9, 1, 4)));
    expect(second.answer.heard).toEqual({ kind: 'chord', tones: tones(9, 1, 4) });
    const arpeggio = after(second, chord, struck(5, true, tones(9, 1)), struck(5, true, tones(9, 1, 4)));
    expect(arpeggio.answer.heard).toEqual({ kind: 'chord', tones: tones(9, 1, 4) });
    // A string that rings on.
    expect(afterHeard(second, struck(6, false, tones(7)), chord)).toBe(second);
  });

  it('says what was not clear, until it is heard again', () => {
    const doubtful = after(draftOf(noAnswer), chord, struck(1, true, tones(9, 4), true));
    expect(doubtful.isDoubtful).toBe(true);
    expect(after(doubtful, chord, struck(2, true, tones(9, 1, 4))).isDoubtful).toBe(false);
  });

  it('is nothing where no tone was heard: what was there stays', () => {
    const first = after(draftOf(noAnswer), chord, struck(1, true, tones(9, 1, 4)));
    const second = after(first, chord, struck(2, false, tones(3, 6)), struck(2, true, []));
    expect(second.answer).toBe(first.answer);
    expect(second.hint).toEqual([]);
  });

  it('lets go of a hint whose verdict stays away', () => {
    const level = (at: number): EarEvent => ({
      kind: 'level',
      at,
      loudness: -30,
      floor: -60,
      clipped: false,
    });
    const hinted = after(draftOf(noAnswer), chord, struck(1, false, tones(9)));
    expect(afterHeard(hinted, level(1.5), chord)).toBe(hinted);
    expect(afterHeard(hinted, level(2.5), chord).hint).toEqual([]);
  });

  it('keeps the taps that were given for it when it is played once more', () => {
    const first = after(draftOf(noAnswer), chord, struck(1, true, tones(9, 0, 4)));
    const tapped = withAnswer(first, tappedFor(first.answer, place(5, 0), chord));
    const second = after(tapped, chord, struck(3, true, tones(9, 1, 4)));
    expect(second.answer.places).toEqual([place(5, 0)]);
  });
});

describe('what was placed and what is heard', () => {
  const placed: Answer = { places: [place(2, 5), place(1, 3)], root: place(2, 5), finger: 3, level: 2 };

  it('replaces the places and their root mark; finger and level stay', () => {
    const { answer } = after(draftOf(placed), chord, struck(1, true, tones(4, 7, 11)));
    expect(answer).toEqual({
      places: [],
      heard: { kind: 'chord', tones: tones(4, 7, 11) },
      way: 'play',
      finger: 3,
      level: 2,
    });
  });

  it('goes on from taps alone once the student taps again', () => {
    const { answer } = after(draftOf(placed), chord, struck(1, true, tones(4, 7, 11)));
    expect(tapsAlone({ ...answer, places: [place(6, 0)] })).toEqual({ places: [], finger: 3, level: 2 });
    expect(tapsAlone(placed)).toEqual(placed);
    expect(tapsAlone({ places: [place(2, 5)], way: 'midi' })).toEqual({ places: [place(2, 5)] });
  });

  it('takes a new start after Again, and the ringing onset not once more', () => {
    const draft = after(draftOf(noAnswer), line, note(5, 60), note(6, 62));
    const cleared = withAnswer(draft, noAnswer);
    expect(afterHeard(cleared, note(6, 62), line)).toBe(cleared);
    expect(pitches(after(cleared, line, note(9, 64)))).toEqual([[64, 0]]);
  });
});

describe('taps for what was heard', () => {
  const heard = after(draftOf(noAnswer), chord, struck(1, true, tones(0, 4, 7))).answer;
  const [root, lowest, other] = [place(5, 3), place(6, 0), place(2, 1)];

  it('come in the order in which they are asked for', () => {
    expect(nextTap(heard, chord)).toBe('root');
    const one = tappedFor(heard, root, chord);
    expect(nextTap(one, chord)).toBe('lowest');
    const two = tappedFor(one, lowest, chord);
    expect(two.places).toEqual([root, lowest]);
    expect(nextTap(two, chord)).toBeUndefined();
  });

  it('put one too many in the last one’s place', () => {
    const two = tappedFor(tappedFor(heard, root, chord), lowest, chord);
    expect(tappedFor(two, other, chord).places).toEqual([root, other]);
    expect(tappedFor(tappedFor(heard, root, line), other, line).places).toEqual([other]);
  });

  it('are taken back by a second tap, with what came after them', () => {
    const two = tappedFor(tappedFor(heard, root, chord), lowest, chord);
    expect(tappedFor(two, lowest, chord).places).toEqual([root]);
    expect(tappedFor(two, root, chord).places).toEqual([]);
  });

  it('are none where none is asked for, or nothing was heard', () => {
    expect(tappedFor(heard, root, { as: 'chord', taps: [] })).toBe(heard);
    expect(nextTap(noAnswer, chord)).toBeUndefined();
    expect(nextTap(heard, null)).toBeUndefined();
  });

  it('are not counted among what was heard', () => {
    expect(heardCount(tappedFor(heard, root, chord))).toBe(3);
    expect(heardCount(after(draftOf(noAnswer), line, note(1, 60), note(2, 62)).answer)).toBe(2);
    expect(heardCount(noAnswer)).toBe(0);
  });
});
