import type { ClassId } from '../../shared/protocol/ids.ts';
import type { ChartsView } from '../../shared/protocol/views.ts';
import { chartsView } from '../classroom/view-charts.ts';
import type { AnswerStore } from '../store/store.ts';

/** The charts of a class as the store has it; undefined where there is no such class, or no more. */
export async function chartsOf(
  store: Pick<AnswerStore, 'load'>,
  id: ClassId,
): Promise<ChartsView | undefined> {
  const state = await store.load(id);
  return state && chartsView(state);
}
