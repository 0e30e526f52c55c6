import { levelsOf, type Levelled } from '../../shared/exercise/levels.ts';
import type { ChartsView } from '../../shared/protocol/views.ts';
import { currentRound } from './round.ts';
import type { Asked } from './state.ts';

/** What whoever has the link may know: the charts of what was revealed, unless it is being asked again just now. */
export function chartsView(state: Asked): ChartsView {
  const { plan, openedAt, instrument, naming } = state;
  const round = currentRound(state);
  const asked = new Set(round && round.phase !== 'revealed' ? levelsOf(round).map(textOf) : []);
  const exercises = new Map<string, Levelled>();
  for (const { phase, voided, exercise, harder } of state.rounds) {
    const levels = [exercise, ...harder].map(textOf);
    const isDue = phase === 'revealed' && !voided && !levels.some((level) => asked.has(level));
    if (isDue && !exercises.has(levels.join())) exercises.set(levels.join(), { exercise, harder });
  }
  return { title: plan?.title ?? null, openedAt, instrument, naming, exercises: [...exercises.values()] };
}

/** Of equal exercises equal: fields that came in another order make another text, which does no harm. */
const textOf = (exercise: Levelled['exercise']) => JSON.stringify(exercise);
