import { Router } from 'express';
import type { RateLimiterMemory } from 'rate-limiter-flexible';
import type { ClassId } from '../../shared/protocol/ids.ts';
import { chartsOf } from '../live/charts.ts';
import type { Store } from '../store/store.ts';
import { countFailure, refuse, takeTry } from './guard.ts';

/** The charts of a class, for whoever has their link: it holds the class's id, which nobody guesses. */
export function chartRoutes(store: Store, failures: RateLimiterMemory): Router {
  const router = Router();

  router.get('/charts/:classId', async (request, response) => {
    if (!(await takeTry(failures, request, response))) return;
    const charts = await chartsOf(store.classes, request.params.classId as ClassId);
    if (charts) return void response.json({ charts });
    await countFailure(failures, request);
    refuse(response, 'not-found', 'There are no charts here. Perhaps they were deleted with their group.');
  });

  return router;
}
