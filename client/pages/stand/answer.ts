import type { Draft } from '../../connection/outbox.ts';
import type { ConnectionState } from '../../connection/class-connection.ts';
import { answerOf, isEmpty, noAnswer, type Answer } from '../../../shared/exercise/answer.ts';
import { atLevel, levelOf, type Level } from '../../../shared/exercise/levels.ts';
import type { RoundId } from '../../../shared/protocol/ids.ts';
import type { StandOwnView, StandStage } from '../../../shared/protocol/views.ts';
import type { Standing } from './words.ts';

/** The student's answer as this device shows it. */
export interface StandAnswer {
  readonly answer: Answer;
  readonly done: boolean;
  readonly standing: Standing;
  readonly level: Level;
  /** The level whose answer counts while nothing is placed at the one shown. */
  readonly counting: Level | null;
}

/** A round on the Stands, at any step. */
export type AnswerableStage = Extract<StandStage, { readonly roundId: RoundId }>;

/** Where the device's own answers come from: the outbox, the level that is played, and the line to the class. */
export interface AnswerSource {
  readonly state: ConnectionState;
  draftFor(roundId: RoundId): Draft | null;
  levelIn(roundId: RoundId, answer: Answer | null, count: number): Level;
}

/**
 * What the device has not delivered yet is newer than what the server holds. Until the hold the student looks at the
 * level they chose; from then on at the one that counts.
 */
export function answerTo(source: AnswerSource, own: StandOwnView, stage: AnswerableStage): StandAnswer {
  const { roundId, kind, harder } = stage;
  const draft = source.draftFor(roundId);
  const stored = own.answer?.roundId === roundId ? own.answer : null;
  const newest = draft ?? stored;
  const given = newest && !isEmpty(newest) ? newest : null;
  const chosen = source.levelIn(roundId, given, harder.length + 1);
  const isOpen = kind === 'open' && !own.timeUp;
  const level = isOpen || !given ? chosen : levelOf(given);
  if (!newest || levelOf(newest) !== level)
    return {
      answer: atLevel(noAnswer, level),
      done: false,
      standing: 'nothing',
      level,
      counting: given && levelOf(given),
    };
  const standing = standingOf(source, draft, given !== null, stored?.late ?? false);
  return { answer: answerOf(newest), done: newest.done, standing, level, counting: null };
}

function standingOf({ state }: AnswerSource, draft: Draft | null, placed: boolean, late: boolean): Standing {
  if (draft?.fate === 'unsent') return state === 'live' ? 'placed' : 'kept';
  if (draft?.fate === 'late' || (!draft && late)) return 'late';
  return placed ? 'safe' : 'nothing';
}

/** The stage with one level in the place of the first. */
export function stageAt<Stage extends AnswerableStage>(stage: Stage, level: Level): Stage {
  const asked = stage.harder[level - 2];
  if (!asked) return stage;
  return 'task' in asked ? { ...stage, ...asked } : { ...stage, task: asked };
}
