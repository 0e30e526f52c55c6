import { beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { Announcer } from '../../../client/pages/stand/announcer.ts';
import type { AnswerSource } from '../../../client/pages/stand/answer.ts';
import { fetchExplanations } from '../../../client/pages/stand/explanation.ts';
import type { Draft } from '../../../client/connection/outbox.ts';
import type { Exercise } from '../../../shared/exercise/exercise.ts';
import { inputOf } from '../../../shared/exercise/input.ts';
import type { ClassId, RoundId, SendId } from '../../../shared/protocol/ids.ts';
import type { StandOwnView, StandSharedView, StandStage } from '../../../shared/protocol/views.ts';
import { wordingsOf } from '../../../shared/exercise/wording.ts';
import { place, type StringNumber } from '../../../shared/theory/fretboard.ts';
import type { NoteNaming } from '../../../shared/theory/naming.ts';

const roundId = 'round-1' as RoundId;
const exercise: Exercise = {
  kind: 'find',
  instrument: 'guitar',
  root: { letter: 'B', alteration: 0 },
  rootString: 2 as StringNumber,
  strictness: 'string',
  range: null,
};
const task = {
  wording: wordingsOf(exercise),
  instrument: 'guitar',
  input: inputOf(exercise),
  range: null,
} as const;
const nameTask = { ...task, input: { kind: 'name', place: place(3, 5), wanted: 'note' } } as const;
const open: StandStage = { kind: 'open', roundId, task, harder: [], seconds: 90 };
const held: StandStage = { kind: 'held', roundId, task, harder: [], seconds: 90 };

const own: StandOwnView = {
  seat: 'in',
  reason: null,
  name: 'Mira',
  alias: null,
  playing: 'off',
  answer: null,
  timeUp: false,
  seconds: null,
  verdict: null,
  accepted: false,
};

function shared(stage: StandStage): StandSharedView {
  return {
    classId: 'class-1' as ClassId,
    group: 'Thursday Strings',
    school: 'Alderwick Community Music School',
    instrument: 'guitar',
    naming: 'english',
    here: 3,
    next: null,
    stage,
    wantsAlias: false,
  };
}

function source(fate: Draft['fate'] | null, state: AnswerSource['state'] = 'live'): AnswerSource {
  const send = { roundId, sendId: 'send-1' as SendId, places: [place(2, 5)], done: false };
  return { state, draftFor: () => (fate ? { ...send, fate } : null), levelIn: () => 1 };
}

let announcer: Announcer;
let naming: NoteNaming;
beforeAll(fetchExplanations);
beforeEach(() => {
  announcer = new Announcer();
  naming = 'english';
});

function next(from: AnswerSource, view: StandSharedView, student: StandOwnView): string | null {
  return announcer.next(from, view, student, naming);
}

describe('what a screen reader hears', () => {
  it('is the task in words, once, and nothing that would answer it', () => {
    expect(next(source(null), shared(open), own)).toBe(
      'Find B. On string 2 (second thinnest), any fret. 1 minute 30 seconds.',
    );
    expect(next(source(null), shared(open), own)).toBeNull();
  });

  it.each([
    ['german', 'Find H.'],
    ['solfege', 'Find si.'],
  ] as const)("is in the student's own note names, though the class has others (%s)", (theirs, words) => {
    naming = theirs;
    expect(next(source(null), shared(open), own)).toContain(words);
  });

  it('is, after the hold, what was named where a name was asked', () => {
    const asked = (kind: 'open' | 'held'): StandStage => ({
      kind,
      roundId,
      task: nameTask,
      harder: [],
      seconds: null,
    });
    next(source('safe'), shared(asked('open')), own);
    expect(next(source('safe'), shared(asked('held')), own)).toBe(
      'Held. Eyes up. What you named last counts.',
    );
  });

  it('is how far the answer has come, but not the tap again', () => {
    next(source(null), shared(open), own);
    expect(next(source('unsent'), shared(open), own)).toBeNull();
    expect(next(source('safe'), shared(open), own)).toBe('Safe. Yours to change until the hold.');
    expect(next(source('unsent', 'lost'), shared(open), own)).toContain('Kept on this phone.');
  });

  it('is the hold, and then never that the answer may be changed', () => {
    next(source('unsent'), shared(open), own);
    expect(next(source('unsent'), shared(held), own)).toBe('Held. Eyes up. What you placed last counts.');
    expect(next(source('safe'), shared(held), own)).toBeNull();
  });

  it('is a late arrival, and whose decision that is', () => {
    next(source('unsent'), shared(held), own);
    expect(next(source('late'), shared(held), own)).toBe('Yours came late. Your teacher decides.');
  });

  it("is the end of the student's own time, though the round goes on", () => {
    next(source('safe'), shared(open), own);
    expect(next(source('safe'), shared(open), { ...own, timeUp: true })).toBe(
      'Time is up. What you placed last counts.',
    );
  });

  it('LEVEL-6: is the level that is looked at, and which one counts while nothing is placed there', () => {
    const levelled: StandStage = { kind: 'open', roundId, task, harder: [nameTask], seconds: null };
    const at = (level: 1 | 2): AnswerSource => ({ ...source('safe'), levelIn: () => level });
    expect(next(at(1), shared(levelled), own)).toMatch(/^First level\. Find B\./);
    expect(next(at(2), shared(levelled), own)).toMatch(
      /^Second level\. .* Your first level counts until you name something here\.$/,
    );
  });

  it('is nothing while the teacher has not let the student in', () => {
    expect(next(source(null), shared(open), { ...own, seat: 'asking' })).toBeNull();
  });
});
