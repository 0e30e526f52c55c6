import { Router, type Request, type Response } from 'express';
import * as v from 'valibot';
import { checkExercise } from '../../shared/exercise/check.ts';
import type { PlanId, Time } from '../../shared/protocol/ids.ts';
import { exerciseSchema, textSchema } from '../../shared/protocol/schemas.ts';
import { newId } from '../secrets.ts';
import type { Store } from '../store/store.ts';
import { needGroup, needTeacher, readBody, refuse } from './guard.ts';

export const planSchema = v.strictObject({
  title: textSchema(80),
  exercises: v.pipe(
    v.array(
      v.strictObject({
        exercise: exerciseSchema,
        seconds: v.nullable(v.pipe(v.number(), v.integer(), v.minValue(5), v.maxValue(3600))),
      }),
    ),
    v.maxLength(100),
  ),
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
    await store.plans.save({ ...body, id, groupId: group.id, updatedAt: Date.now() as Time });
    response.json({ id });
  });

  router.get('/plans/:id', async (request, response) => {
    const plan = await needPlan(request, response);
    if (plan) response.json({ plan });
  });

  router.put('/plans/:id', async (request, response) => {
    const plan = await needPlan(request, response);
    const body = plan && readBody(planSchema, request, response);
    if (!body) return;
    const problem = problemIn(body.exercises);
    if (problem) return refuse(response, 'exercise-refused', problem);
    await store.plans.save({ ...plan, ...body, updatedAt: Date.now() as Time });
    response.json({});
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

function problemIn(exercises: v.InferOutput<typeof planSchema>['exercises']): string | undefined {
  for (const [index, { exercise }] of exercises.entries()) {
    const checked = checkExercise(exercise);
    if (!checked.ok) return `Exercise ${String(index + 1)}: ${checked.error}`;
  }
  return undefined;
}
