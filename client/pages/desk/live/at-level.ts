import { isEmpty } from '../../../../shared/exercise/answer.ts';
import { exerciseAt, levelOf, levelsUpTo, type Level } from '../../../../shared/exercise/levels.ts';
import type { DeskRoundView, DeskView } from '../../../../shared/protocol/views.ts';
import { countedAnswer } from './figures.ts';
import { currentRound } from './steps.ts';

/** The levels of a round; none where there is only one. */
export function levelsOfRound({ harder }: Pick<DeskRoundView, 'harder'>): readonly Level[] {
  return harder.length === 0 ? [] : levelsUpTo(harder.length + 1);
}

/** The view as if this level alone had been asked, of those who answered it. */
export function viewAtLevel(view: DeskView, level: Level): DeskView {
  const round = currentRound(view);
  if (!round) return view;
  const alone: DeskRoundView = { ...round, exercise: exerciseAt(round, level), harder: [] };
  const students = view.students.filter((student) => {
    const answer = countedAnswer(student);
    return answer && !isEmpty(answer) && levelOf(answer) === level;
  });
  return { ...view, rounds: [...view.rounds.slice(0, -1), alone], students };
}
