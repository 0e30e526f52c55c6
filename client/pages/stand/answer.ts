import type { Draft } from '../../connection/outbox.ts';
import type { ConnectionState } from '../../connection/class-connection.ts';
import { answerOf, isEmpty, noAnswer, type Answer } from '../../../shared/exercise/answer.ts';
import type { RoundId } from '../../../shared/protocol/ids.ts';
import type { StandOwnView } from '../../../shared/protocol/views.ts';
import type { Standing } from './words.ts';

/** The student's answer as this device shows it. */
export interface StandAnswer {
  readonly answer: Answer;
  readonly done: boolean;
  readonly standing: Standing;
}

/** Where the device's own answers come from: the outbox, and the line to the class. */
export interface AnswerSource {
  readonly state: ConnectionState;
  draftFor(roundId: RoundId): Draft | null;
}

/** What the device has not delivered yet is newer than what the server holds. */
export function answerTo(source: AnswerSource, own: StandOwnView, roundId: RoundId): StandAnswer {
  const draft = source.draftFor(roundId);
  const stored = own.answer?.roundId === roundId ? own.answer : null;
  const newest = draft ?? stored;
  if (!newest) return { answer: noAnswer, done: false, standing: 'nothing' };
  const answer = answerOf(newest);
  const standing = standingOf(source, draft, !isEmpty(answer), stored?.late ?? false);
  return { answer, done: newest.done, standing };
}

function standingOf({ state }: AnswerSource, draft: Draft | null, placed: boolean, late: boolean): Standing {
  if (draft?.fate === 'unsent') return state === 'live' ? 'placed' : 'kept';
  if (draft?.fate === 'late' || (!draft && late)) return 'late';
  return placed ? 'safe' : 'nothing';
}
