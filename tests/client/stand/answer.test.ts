import { describe, expect, it } from 'vitest';
import { LevelChoice } from '../../../client/connection/level-choice.ts';
import { memoryStore } from '../../../client/lib/key-store.ts';
import {
  answerTo,
  stageAt,
  type AnswerableStage,
  type AnswerSource,
} from '../../../client/pages/stand/answer.ts';
import type { Draft } from '../../../client/connection/outbox.ts';
import { answerKey } from '../../../shared/exercise/key.ts';
import { inputOf } from '../../../shared/exercise/input.ts';
import type { Exercise } from '../../../shared/exercise/exercise.ts';
import { wordingsOf } from '../../../shared/exercise/wording.ts';
import type { RoundId, SendId } from '../../../shared/protocol/ids.ts';
import type { OwnAnswerView, StandOwnView, TaskView } from '../../../shared/protocol/views.ts';
import { build, find, places } from '../../support/exercises.ts';

const roundId = 'round-1' as RoundId;
const task = (exercise: Exercise): TaskView => ({
  wording: wordingsOf(exercise),
  instrument: 'guitar',
  input: inputOf(exercise),
  range: null,
});
const [first, second] = [find('D'), build('E', 'minor')];
const open: AnswerableStage = {
  kind: 'open',
  roundId,
  task: task(first),
  harder: [task(second)],
  seconds: null,
};
const held: AnswerableStage = { ...open, kind: 'held' };

const own = (answer: OwnAnswerView | null): StandOwnView => ({
  seat: 'in',
  reason: null,
  name: 'Mira',
  alias: null,
  playing: 'off',
  answer,
  timeUp: false,
  seconds: null,
  verdict: null,
  accepted: false,
});
const sendId = 'send-1' as SendId;
const sent: OwnAnswerView = { roundId, sendId, places: places([2, 3]), done: true, late: false };

function source(choice = new LevelChoice(memoryStore()), draft: Draft | null = null): AnswerSource {
  return {
    state: 'live',
    draftFor: () => draft,
    levelIn: (id, answer, count) => choice.levelIn(id, answer, count),
  };
}

function choosing(level: 1 | 2): LevelChoice {
  const choice = new LevelChoice(memoryStore());
  choice.choose(roundId, level);
  return choice;
}

describe('LEVEL-6: what a Stand shows of a round with levels', () => {
  it('is the answer where it was given', () => {
    expect(answerTo(source(), own(sent), open)).toMatchObject({
      level: 1,
      answer: { places: sent.places },
      done: true,
      standing: 'safe',
      counting: null,
    });
  });

  it('is nothing yet at another level, and that the answer still counts', () => {
    expect(answerTo(source(choosing(2)), own(sent), open)).toEqual({
      level: 2,
      answer: { places: [], level: 2 },
      done: false,
      standing: 'nothing',
      counting: 1,
    });
  });

  it('is what this device has placed there, though the server holds the other level', () => {
    const draft: Draft = { ...sent, places: places([2, 5]), level: 2, done: false, fate: 'unsent' };
    expect(answerTo(source(choosing(2), draft), own(sent), open)).toMatchObject({
      level: 2,
      answer: { places: places([2, 5]), level: 2 },
      standing: 'placed',
      counting: null,
    });
  });

  it('is from the hold on, and once the time is up, the level that counts', () => {
    for (const [stage, timeUp] of [
      [held, false],
      [open, true],
    ] as const)
      expect(answerTo(source(choosing(2)), { ...own(sent), timeUp }, stage)).toMatchObject({
        level: 1,
        answer: { places: sent.places },
        standing: 'safe',
      });
    expect(answerTo(source(choosing(2)), own(null), held)).toMatchObject({ level: 2, standing: 'nothing' });
  });

  it('holds nothing that was taken back for an answer that counts', () => {
    expect(answerTo(source(choosing(2)), own({ ...sent, places: [] }), open).counting).toBeNull();
  });
});

it('a stage is told in the words of one level, and after the reveal with its key', () => {
  expect(stageAt(open, 2).task).toEqual(task(second));
  expect(stageAt(open, 1)).toBe(open);
  const reveal = (exercise: Exercise) => ({
    task: task(exercise),
    reveal: { exercise, notes: answerKey(exercise) },
  });
  const revealed = { kind: 'revealed', roundId, ...reveal(first), harder: [reveal(second)] } as const;
  expect(stageAt(revealed, 2).reveal).toEqual(reveal(second).reveal);
});
