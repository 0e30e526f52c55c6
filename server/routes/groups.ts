import { Router, type Response } from 'express';
import * as v from 'valibot';
import type { GroupId, StudentId, Time } from '../../shared/protocol/ids.ts';
import { idSchema, instrumentIdSchema, textSchema } from '../../shared/protocol/schemas.ts';
import type { InstrumentId } from '../../shared/theory/fretboard.ts';
import { parseInstrument } from '../../shared/theory/instrument-id.ts';
import type { ClassRegistry } from '../live/registry.ts';
import { newId } from '../secrets.ts';
import type { Group, Store } from '../store/store.ts';
import { needGroup, needTeacher, readBody, refuse } from './guard.ts';

const timeSchema = v.pipe(
  v.number(),
  v.integer(),
  v.transform((time) => time as Time),
);
const groupSchema = v.strictObject({
  name: textSchema(60),
  school: v.union([v.literal(''), textSchema(80)]),
  instrument: instrumentIdSchema,
  naming: v.picklist(['english', 'german', 'solfege']),
  language: v.pipe(v.string(), v.maxLength(20)),
  purgeAt: v.nullable(timeSchema),
});
const studentSchema = v.partial(
  v.strictObject({
    name: textSchema(40),
    seatNumber: v.nullable(v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(999))),
    alias: v.nullable(textSchema(20)),
    team: v.nullable(textSchema(20)),
    moreTime: v.picklist([1, 1.25, 1.5, 2, 3]),
  }),
);
const namesSchema = v.strictObject({
  names: v.pipe(v.array(textSchema(40)), v.minLength(1), v.maxLength(300)),
});

/** Groups and their registers. A running class of the group hears of every edit. */
export function groupRoutes(store: Store, registry: ClassRegistry): Router {
  const router = Router();

  async function openClassOf(group: Group) {
    const open = (await store.classes.ofGroup(group.id)).find(({ closedAt }) => closedAt === null);
    return open ? { id: open.id, code: open.code } : null;
  }

  router.get('/groups', async (request, response) => {
    const teacher = await needTeacher(store, request, response);
    if (!teacher) return;
    const groups = await store.groups.ofTeacher(teacher.id);
    response.json({
      groups: await Promise.all(
        groups.map(async (group) => ({ ...group, openClass: await openClassOf(group) })),
      ),
    });
  });

  router.post('/groups', async (request, response) => {
    const teacher = await needTeacher(store, request, response);
    const body = teacher && readBody(groupSchema, request, response);
    if (!body || !isInstrument(body.instrument, response)) return;
    const id = newId() as GroupId;
    await store.groups.create({ ...body, id, teacherId: teacher.id, createdAt: Date.now() as Time });
    response.json({ id });
  });

  router.get('/groups/:id', async (request, response) => {
    const group = await needGroup(store, request, response, request.params.id);
    if (!group) return;
    const [students, plans, classes, openClass] = await Promise.all([
      store.groups.students(group.id),
      store.plans.ofGroup(group.id),
      store.classes.ofGroup(group.id),
      openClassOf(group),
    ]);
    response.json({ group: { ...group, openClass }, students, plans, classes });
  });

  router.patch('/groups/:id', async (request, response) => {
    const group = await needGroup(store, request, response, request.params.id);
    const body = group && readBody(v.partial(groupSchema), request, response);
    if (!body || (body.instrument !== undefined && !isInstrument(body.instrument, response))) return;
    await store.groups.update(group.id, withoutUndefined(body));
    await registry.refresh(group.id);
    response.json({});
  });

  router.delete('/groups/:id', async (request, response) => {
    const group = await needGroup(store, request, response, request.params.id);
    if (!group) return;
    await registry.drop(group.id);
    await store.groups.remove(group.id);
    response.json({});
  });

  router.post('/groups/:id/students', async (request, response) => {
    const group = await needGroup(store, request, response, request.params.id);
    const body = group && readBody(namesSchema, request, response);
    if (!body) return;
    const known = new Set((await store.groups.students(group.id)).map(({ name }) => name.toLowerCase()));
    for (const name of body.names) {
      if (known.has(name.toLowerCase())) continue;
      known.add(name.toLowerCase());
      const id = newId() as StudentId;
      await store.groups.saveStudent(group.id, {
        id,
        name,
        seatNumber: null,
        alias: null,
        team: null,
        moreTime: 1,
      });
    }
    await registry.refresh(group.id);
    response.json({});
  });

  router.patch('/students/:id', async (request, response) => {
    const found = await studentOf(request.params.id);
    if (!found) return refuse(response, 'not-found');
    const group = await needGroup(store, request, response, found.groupId);
    const body = group && readBody(studentSchema, request, response);
    if (!body) return;
    const others = found.students.filter(({ id }) => id !== found.student.id);
    const { name } = body;
    if (name !== undefined && others.some((other) => other.name.toLowerCase() === name.toLowerCase())) {
      return refuse(response, 'name-taken');
    }
    if (body.seatNumber && others.some((other) => other.seatNumber === body.seatNumber)) {
      return refuse(response, 'name-taken', 'This seat number is taken. Choose another.');
    }
    await store.groups.saveStudent(group.id, { ...found.student, ...withoutUndefined(body) });
    await registry.refresh(group.id);
    response.json({});
  });

  router.delete('/students/:id', async (request, response) => {
    const found = await studentOf(request.params.id);
    if (!found) return refuse(response, 'not-found');
    const group = await needGroup(store, request, response, found.groupId);
    if (!group) return;
    await store.groups.removeStudent(found.student.id);
    await registry.refresh(group.id);
    response.json({});
  });

  async function studentOf(text: string) {
    const id = v.safeParse(idSchema<StudentId>(), text);
    const groupId = id.success ? await store.groups.studentGroup(id.output) : undefined;
    if (!groupId) return undefined;
    const students = await store.groups.students(groupId);
    const student = students.find((one) => one.id === id.output);
    return student && { groupId, students, student };
  }

  return router;
}

/** False after a refusal was sent. */
function isInstrument(id: InstrumentId, response: Response): boolean {
  const parsed = parseInstrument(id);
  if (!parsed.ok) refuse(response, 'instrument-refused', parsed.error);
  return parsed.ok;
}

/** Fields that were left out stay as they are. */
function withoutUndefined<T extends object>(fields: T): { [Key in keyof T]: Exclude<T[Key], undefined> } {
  const given = Object.entries(fields).filter(([, value]) => value !== undefined);
  return Object.fromEntries(given) as { [Key in keyof T]: Exclude<T[Key], undefined> };
}
