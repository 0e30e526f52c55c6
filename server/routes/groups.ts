import { Router, type Request, type Response } from 'express';
import * as v from 'valibot';
import type { GroupId, StudentId, Time } from '../../shared/protocol/ids.ts';
import { nameKey } from '../../shared/protocol/name-key.ts';
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
  school: textSchema(80, 0),
  instrument: instrumentIdSchema,
  naming: v.picklist(['english', 'german', 'solfege']),
  /** A BCP 47 tag. */
  language: v.pipe(v.string(), v.maxLength(20), v.regex(/^[A-Za-z]{2,8}(-[A-Za-z0-9]{1,8})*$/)),
  purgeAt: v.nullable(timeSchema),
});
const studentEntries = {
  name: textSchema(40),
  seatNumber: v.nullable(v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(999))),
  team: v.nullable(textSchema(20)),
  moreTime: v.picklist([1, 1.25, 1.5, 2, 3]),
};
const studentSchema = v.partial(v.strictObject({ ...studentEntries, alias: v.nullable(textSchema(20)) }));
const mergeSchema = v.strictObject({ into: idSchema<StudentId>() });
/** Added in one request. */
const mostAdded = 300;
const namesSchema = v.strictObject({
  names: v.pipe(v.array(textSchema(40)), v.minLength(1), v.maxLength(mostAdded)),
});
/** The rows of a table, with all that it says of each student. */
const rowsSchema = v.strictObject({
  students: v.pipe(v.array(v.strictObject(studentEntries)), v.minLength(1), v.maxLength(mostAdded)),
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
    const rows = group && addedIn(request, response);
    if (!rows) return;
    const register = await store.groups.students(group.id);
    const known = new Set(register.map(({ name }) => nameKey(name)));
    const added = rows.filter(({ name }) => !known.has(nameKey(name)) && known.add(nameKey(name)));
    const seats = [...register, ...added].flatMap(({ seatNumber }) => seatNumber ?? []);
    const taken = seats.find((seat, index) => seats.indexOf(seat) !== index);
    // All or none: what a teacher saw before the press is what is done.
    if (taken !== undefined)
      return refuse(response, 'name-taken', `Seat ${String(taken)} is taken. Choose another.`);
    for (const fields of added)
      await store.groups.saveStudent(group.id, { ...fields, id: newId() as StudentId, alias: null });
    await registry.refresh(group.id);
    response.json({});
  });

  router.patch('/students/:id', async (request, response) => {
    const found = await needStudent(request, response);
    const body = found && readBody(studentSchema, request, response);
    if (!body) return;
    const others = found.students.filter(({ id }) => id !== found.student.id);
    const { name } = body;
    if (name !== undefined && others.some((other) => nameKey(other.name) === nameKey(name))) {
      return refuse(response, 'name-taken');
    }
    if (body.seatNumber && others.some((other) => other.seatNumber === body.seatNumber)) {
      return refuse(response, 'name-taken', 'This seat number is taken. Choose another.');
    }
    await store.groups.saveStudent(found.groupId, { ...found.student, ...withoutUndefined(body) });
    await registry.refresh(found.groupId);
    response.json({});
  });

  router.delete('/students/:id', async (request, response) => {
    const found = await needStudent(request, response);
    if (!found) return;
    await store.groups.removeStudent(found.student.id);
    await registry.refresh(found.groupId);
    response.json({});
  });

  router.post('/students/:id/merge', async (request, response) => {
    const found = await needStudent(request, response);
    const body = found && readBody(mergeSchema, request, response);
    if (!body) return;
    const into = found.students.find(({ id }) => id === body.into && id !== found.student.id);
    if (!into) return refuse(response, 'student-unknown');
    await store.groups.mergeStudents(found.student.id, into.id);
    await registry.refresh(found.groupId);
    response.json({});
  });

  /** A student on a register of the teacher's own; undefined after a refusal was sent. */
  async function needStudent(request: Request<{ id: string }>, response: Response) {
    if (!(await needTeacher(store, request, response))) return undefined;
    const id = v.safeParse(idSchema<StudentId>(), request.params.id);
    const groupId = id.success ? await store.groups.studentGroup(id.output) : undefined;
    const students = groupId ? await store.groups.students(groupId) : [];
    const student = students.find((one) => one.id === id.output);
    if (!groupId || !student) return refuse(response, 'not-found');
    const group = await needGroup(store, request, response, groupId);
    return group && { groupId, students, student };
  }

  return router;
}

/** Who is to be added: rows, or names alone; undefined after a refusal was sent. */
function addedIn(request: Request, response: Response) {
  const body: unknown = request.body;
  if (typeof body === 'object' && body !== null && 'students' in body)
    return readBody(rowsSchema, request, response)?.students;
  const names = readBody(namesSchema, request, response)?.names;
  return names?.map((name) => ({ name, seatNumber: null, team: null, moreTime: 1 }));
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
