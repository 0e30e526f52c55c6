import { Router } from 'express';
import * as v from 'valibot';
import type { ClassId, PlanId, StudentId, Time } from '../../shared/protocol/ids.ts';
import { mostPlanned } from '../../shared/protocol/plans.ts';
import { enteredEntries, idSchema } from '../../shared/protocol/schemas.ts';
import { keepPaper } from '../live/paper.ts';
import type { ClassRegistry } from '../live/registry.ts';
import { newClassCode, newId } from '../secrets.ts';
import type { Store } from '../store/store.ts';
import { needGroup, needTeacher, readBody, refuse } from './guard.ts';

/** Clocks differ, and a day begins earlier elsewhere. Milliseconds. */
const ahead = 24 * 3_600_000;

const paperSchema = v.strictObject({
  /** Of the class to be, made by the sender: 128 random bits. */
  id: v.pipe(
    v.string(),
    v.regex(/^[\w-]{22}$/),
    v.transform((id) => id as ClassId),
  ),
  /** Of the plan that was looked at. */
  revision: v.pipe(v.number(), v.integer(), v.minValue(1)),
  at: v.pipe(v.number(), v.integer(), v.minValue(0)),
  results: v.pipe(
    v.array(
      v.strictObject({
        studentId: idSchema<StudentId>(),
        answers: v.pipe(
          v.array(v.strictObject({ exerciseId: idSchema<string>(), ...enteredEntries })),
          v.maxLength(mostPlanned),
        ),
      }),
    ),
    v.minLength(1),
    v.maxLength(300),
  ),
});

/** What came back on paper. */
export function paperRoutes(store: Store, registry: ClassRegistry): Router {
  const router = Router();

  router.post('/plans/:id/paper', async (request, response) => {
    if (!(await needTeacher(store, request, response))) return;
    const plan = await store.plans.byId(request.params.id as PlanId);
    if (!plan) return refuse(response, 'not-found');
    const group = await needGroup(store, request, response, plan.groupId);
    const body = group && readBody(paperSchema, request, response);
    if (!body) return;
    if (body.revision !== plan.revision) return refuse(response, 'plan-changed');
    const now = Date.now();
    if (body.at > now + ahead) return refuse(response, 'malformed', 'This day lies in the future.');
    const given = body.results.flatMap(({ studentId, answers }) =>
      answers.map(({ exerciseId, ...answer }) => ({ studentId, exerciseId, answer })),
    );
    const rounds = plan.exercises
      .map(({ id }, index) => ({ index, answers: given.filter(({ exerciseId }) => exerciseId === id) }))
      .filter(({ answers }) => answers.length > 0);
    if (rounds.length === 0) return refuse(response, 'malformed', 'No results are written down yet.');
    const kept = await keepPaper(store.classes, newId, {
      id: body.id,
      group,
      students: await store.groups.students(group.id),
      code: newClassCode(),
      plan: { id: plan.id, title: plan.title, exercises: plan.exercises },
      at: Math.min(body.at, now) as Time,
      rounds,
    });
    if (!kept.ok) return refuse(response, kept.error);
    await registry.refresh(group.id);
    response.json({ id: body.id, before: kept.value === 'kept-before' });
  });

  return router;
}
