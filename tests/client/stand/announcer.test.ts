import { beforeEach, describe, expect, it } from 'vitest';
import { Announcer } from '../../../client/pages/stand/announcer.ts';
import type { AnswerSource } from '../../../client/pages/stand/answer.ts';
import type { Draft } from '../../../client/connection/outbox.ts';
import type { ClassId, RoundId, SendId } from '../../../shared/protocol/ids.ts';
import type { StandOwnView, StandSharedView, StandStage } from '../../../shared/protocol/views.ts';
import { place } from '../../../shared/theory/fretboard.ts';

const roundId = 'round-1' as RoundId;
const task = {
  title: 'Find E',
  detail: 'On string 2, any fret.',
  instrument: 'guitar',
  placesPerString: 'many',
  range: null,
} as const;
const open: StandStage = { kind: 'open', roundId, task, seconds: 90 };
const held: StandStage = { kind: 'held', roundId, task, seconds: 90 };

const own: StandOwnView = {
  seat: 'in',
  reason: null,
  name: 'Mira',
  alias: null,
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
  return { state, draftFor: () => (fate ? { ...send, fate } : null) };
}

let announcer: Announcer;
beforeEach(() => {
  announcer = new Announcer();
});

describe('what a screen reader hears', () => {
  it('is the task in words, once, and nothing that would answer it', () => {
    expect(announcer.next(source(null), shared(open), own)).toBe(
      'Find E. On string 2, any fret. 1 minute 30 seconds.',
    );
    expect(announcer.next(source(null), shared(open), own)).toBeNull();
  });

  it('is how far the answer has come, but not the tap again', () => {
    announcer.next(source(null), shared(open), own);
    expect(announcer.next(source('unsent'), shared(open), own)).toBeNull();
    expect(announcer.next(source('safe'), shared(open), own)).toBe('Safe. Yours to change until the hold.');
    expect(announcer.next(source('unsent', 'lost'), shared(open), own)).toContain('Kept on this phone.');
  });

  it('is the hold, and then never that the answer may be changed', () => {
    announcer.next(source('unsent'), shared(open), own);
    expect(announcer.next(source('unsent'), shared(held), own)).toBe(
      'Held. Eyes up. What you placed last counts.',
    );
    expect(announcer.next(source('safe'), shared(held), own)).toBeNull();
  });

  it('is a late arrival, and whose decision that is', () => {
    announcer.next(source('unsent'), shared(held), own);
    expect(announcer.next(source('late'), shared(held), own)).toBe('Yours came late. Your teacher decides.');
  });

  it("is the end of the student's own time, though the round goes on", () => {
    announcer.next(source('safe'), shared(open), own);
    expect(announcer.next(source('safe'), shared(open), { ...own, timeUp: true })).toBe(
      'Time is up. What you placed last counts.',
    );
  });

  it('is nothing while the teacher has not let the student in', () => {
    expect(announcer.next(source(null), shared(open), { ...own, seat: 'asking' })).toBeNull();
  });
});
