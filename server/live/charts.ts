import type { ClassId } from '../../shared/protocol/ids.ts';
import type { ChartsView } from '../../shared/protocol/views.ts';
import { chartsView } from '../classroom/view-charts.ts';
import type { ClassStore } from '../store/store.ts';

/** The charts of a class as the store has it; undefined where there is no such class, or no more. */
export async function chartsOf(
  store: Pick<ClassStore, 'asked'>,
  id: ClassId,
): Promise<ChartsView | undefined> {
  const asked = await store.asked(id);
  return asked && chartsView(asked);
}
