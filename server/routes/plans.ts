import { Router, type Request, type Response } from 'express';
import * as v from 'valibot';
import { checkExercise } from '../../shared/exercise/check.ts';
import { levelsOf } from '../../shared/exercise/levels.ts';
import { inPartOrder } from '../../shared/plans/edit.ts';
import type { PlanId, Time } from '../../shared/protocol/ids.ts';
import { planSchema } from '../../shared/protocol/plans.ts';
import { newId } from '../secrets.ts';
import type { Store } from '../store/store.ts';
import { needGroup, needTeacher, readBody, refuse } from './guard.ts';

/** A plan as it is to be, and the revision that it was made from. */
const changedPlanSchema = v.strictObject({
  ...planSchema.entries,
  revision: v.pipe(v.number(), v.integer(), v.minValue(1)),
});

/** Plans: ordered lists of exercises, each of which can be asked. */
export function planRoutes(store: Store): Router {
  const router = Router();

  router.post('/groups/:id/plans', async (request, response) => {
    const group = await needGroup(store, request, response, request.params.id);
    const body = group && readBody(planSchema, request, response);
    if (!body) return;
    const problem = problemIn(body.exercises);
    if (problem) return refuse(response, 'exercise-refused', problem);
    const id = newId() as PlanId;
    await store.plans.save({ ...named(body), id, groupId: group.id, revision: 1, updatedAt: now() });
    response.json({ id });
  });

  router.get('/plans/:id', async (request, response) => {
    const plan = await needPlan(request, response);
    if (plan) response.json({ plan });
  });

  router.put('/plans/:id', async (request, response) => {
    const plan = await needPlan(request, response);
    const body = plan && readBody(changedPlanSchema, request, response);
    if (!body) return;
    const problem = problemIn(body.exercises);
    if (problem) return refuse(response, 'exercise-refused', problem);
    const revision = body.revision + 1;
    const saved = await store.plans.save({ ...plan, ...named(body), revision, updatedAt: now() });
    if (saved === 'changed') return refuse(response, 'plan-changed');
    response.json({ revision });
  });

  router.delete('/plans/:id', async (request, response) => {
    const plan = await needPlan(request, response);
    if (!plan) return;
    await store.plans.remove(plan.id);
    response.json({});
  });

  /** A plan of the teacher's own; undefined after a refusal was sent. */
  async function needPlan(request: Request<{ id: string }>, response: Response) {
    if (!(await needTeacher(store, request, response))) return undefined;
    const plan = await store.plans.byId(request.params.id as PlanId);
    if (!plan) refuse(response, 'not-found');
    return plan && (await needGroup(store, request, response, plan.groupId)) ? plan : undefined;
  }

  return router;
}

const now = () => Date.now() as Time;

type SentPlan = v.InferOutput<typeof planSchema>;

/** Exercises part by part, as they are asked; those that came without an id get one. */
function named<T extends SentPlan>(plan: T) {
  const exercises = inPartOrder(plan.exercises).map((planned) => ({ ...planned, id: planned.id ?? newId() }));
  return { ...plan, exercises };
}

function problemIn(exercises: SentPlan['exercises']): string | undefined {
  const ids = exercises.flatMap(({ id }) => id ?? []);
  if (new Set(ids).size < ids.length) return 'Two exercises of the plan have the same id.';
  for (const [index, planned] of exercises.entries())
    for (const exercise of levelsOf(planned)) {
      const checked = checkExercise(exercise);
      if (!checked.ok) return `Exercise ${String(index + 1)}: ${checked.error}`;
    }
  return undefined;
}
