import type { BoardStage, BoardView, ScoreView } from '../../shared/protocol/views.ts';
import { commonestSlipOf, countedAnswers, currentRound, shareOf } from './round.ts';
import type { ClassState } from './state.ts';
import {
  expectedCount,
  hereCount,
  nextView,
  revealView,
  showView,
  taskView,
  type Presence,
} from './view-common.ts';
import { scoreView } from './view-score.ts';

/** What the projector may show: no names, no identifiers, no answer before the reveal. */
export function boardView(state: ClassState, presence: Presence, address: string): BoardView {
  return {
    group: state.group,
    school: state.school,
    code: state.code,
    address,
    instrument: state.instrument,
    naming: state.naming,
    here: hereCount(state, presence),
    next: nextView(state),
    stage: stage(state, presence),
  };
}

const noScore: ScoreView = { now: { right: 0, of: 0 }, before: null, rows: [], teams: [], ranking: [] };

function stage(state: ClassState, presence: Presence): BoardStage {
  if (state.closedAt !== null)
    return { kind: 'over', score: state.settings.score === 'off' ? noScore : scoreView(state) };
  const show = showView(state);
  if (show) return { kind: 'show', show };
  const round = currentRound(state);
  if (!round) {
    const played = state.rounds.some(({ phase, voided }) => phase === 'revealed' && !voided);
    return played && state.settings.score !== 'off'
      ? { kind: 'score', score: scoreView(state) }
      : { kind: 'waiting' };
  }
  const task = taskView(round.exercise);
  if (round.phase === 'revealed') {
    const slips = commonestSlipOf(round);
    const [example] = slips;
    return {
      kind: 'revealed',
      task,
      reveal: revealView(round),
      share: shareOf(countedAnswers(round).values()),
      slip: example ? { count: slips.length, example } : null,
    };
  }
  const { strictness, rootString } = round.exercise;
  return {
    kind: round.phase,
    task,
    rootString: strictness === 'place' || strictness === 'string' ? rootString : null,
    seconds: round.seconds,
    done: [...round.answers.values()].filter((answer) => answer.done).length,
    of: expectedCount(state, round, presence),
  };
}
