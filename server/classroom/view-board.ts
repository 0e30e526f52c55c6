import { levelsOf } from '../../shared/exercise/levels.ts';
import { known } from '../../shared/lib/assert.ts';
import type { BoardStage, BoardView, CountedLevel, ScoreView } from '../../shared/protocol/views.ts';
import { commonestSlipOf, currentRound, levelsOfRound } from './round.ts';
import type { ClassState, Round } from './state.ts';
import {
  expectedCount,
  hereCount,
  nextView,
  revealedLevel,
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
  if (round.phase === 'revealed') return revealed(round);
  return {
    kind: round.phase,
    task: taskView(round.exercise),
    harder: round.harder.map(taskView),
    rootString: rootStringOf(round),
    seconds: round.seconds,
    done: [...round.answers.values()].filter((answer) => answer.done).length,
    of: expectedCount(state, round, presence),
  };
}

/** The string that holds the root, where every level says the same one. */
function rootStringOf(round: Round): number | null {
  const strings = levelsOf(round).map(({ strictness, rootString }) =>
    strictness === 'place' || strictness === 'string' ? rootString : null,
  );
  return strings.every((string) => string === strings[0]) ? (strings[0] ?? null) : null;
}

/** The first level's chart; of all levels' slips the one that most answers show. */
function revealed(round: Round): BoardStage {
  const levels = levelsOfRound(round);
  const [first, ...harder] = levels.map(({ exercise, share }): CountedLevel => ({
    ...revealedLevel(exercise),
    share,
  }));
  const slips = levels.map((level) => ({ level: level.level, verdicts: commonestSlipOf(level) }));
  const most = slips.reduce((best, slip) => (slip.verdicts.length > best.verdicts.length ? slip : best));
  const [example] = most.verdicts;
  return {
    kind: 'revealed',
    ...known(first, 'first level'),
    harder,
    slip: example ? { count: most.verdicts.length, level: most.level, example } : null,
  };
}
