import { afterEach, beforeEach, expect, test } from 'vitest';
import { openStore } from '../../server/store/sqlite/open-store.ts';
import { known } from '../../shared/lib/assert.ts';
import type { ClassId } from '../../shared/protocol/ids.ts';
import type { Exercise } from '../../shared/exercise/exercise.ts';
import type { Share } from '../../shared/protocol/views.ts';
import { build, find, name, places, scale } from '../support/exercises.ts';
import { LiveServer } from '../support/live-server.ts';
import { Screen, TeacherBrowser } from '../support/people.ts';

let server: LiveServer;
let teacher: TeacherBrowser;
let groupId: string;
let planId: string;
let students: readonly { readonly id: string; readonly name: string }[];

const exercises: readonly { readonly exercise: Exercise; readonly harder?: readonly Exercise[] }[] = [
  { exercise: find('D') },
  {
    exercise: build('E', 'minor'),
    harder: [build('E', 'm7', { strictness: 'anywhere', voicing: { kind: 'any' } })],
  },
  { exercise: scale('A', 'minor-pentatonic', 1, 10) },
  { exercise: name('E', 5) },
];
const ids = ['root', 'chord', 'box', 'name'];
const day = Date.UTC(2026, 9, 1, 12);
const id = 'paper-of-the-1st-of-10'.slice(0, 22);

interface Group {
  readonly students: typeof students;
  readonly classes: readonly {
    readonly id: string;
    readonly openedAt: number;
    readonly closedAt: number | null;
    readonly rounds: number;
    readonly share: Share;
  }[];
  readonly group: { readonly openClass: object | null };
}

const group = async () => (await teacher.call<Group>('GET', `groups/${groupId}`)).body;
const idOf = (studentName: string) =>
  known(
    students.find((student) => student.name === studentName),
    studentName,
  ).id;

beforeEach(async () => {
  server = await LiveServer.start();
  teacher = new TeacherBrowser(server);
  await teacher.setUp();
  groupId = await teacher.makeGroup(['Kaya', 'Bram', 'Edda']);
  ({ students } = await group());
  const planned = exercises.map((one, index) => ({ ...one, id: ids[index], seconds: null }));
  const made = await teacher.call<{ id: string }>('POST', `groups/${groupId}/plans`, {
    title: 'Roots on paper',
    exercises: planned,
  });
  planId = made.body.id;
});

afterEach(() => server.stop());

type Answers = readonly (readonly [exerciseId: string, answer: object])[];

const send = (results: Readonly<Record<string, Answers>>, fields: object = {}) =>
  teacher.call<{ id?: string; error?: { code: string; message: string } }>('POST', `plans/${planId}/paper`, {
    id,
    revision: 1,
    at: day,
    results: Object.entries(results).map(([studentName, answers]) => ({
      studentId: idOf(studentName),
      answers: answers.map(([exerciseId, answer]) => ({ exerciseId, places: [], ...answer })),
    })),
    ...fields,
  });

const at = (...pairs: readonly (readonly [number, number])[]) => ({ places: places(...pairs) });
const right = { teacherSays: 'right' };
const notYet = { teacherSays: 'not-yet' };

/** The class as the store has it. */
async function stored(classId = id) {
  const store = openStore({ path: server.storePath });
  const state = await store.classes.load(classId as ClassId);
  await store.close();
  return known(state, 'class');
}

test('PAPER-1: results become a class of that day that is over, with the plan and a revealed round for each exercise', async () => {
  const reply = await send({
    Kaya: [
      ['root', at([2, 3])],
      ['chord', at([3, 5], [2, 5], [1, 3])],
      ['box', right],
    ],
    Bram: [
      ['root', at([2, 10])],
      ['box', notYet],
    ],
  });
  expect(reply).toEqual({ status: 200, body: { id, before: false } });
  const { classes, group: after } = await group();
  expect(after.openClass).toBeNull();
  expect(classes).toMatchObject([
    { id, openedAt: day, closedAt: day, rounds: 3, share: { right: 2, of: 5 } },
  ]);
  const state = await stored();
  expect(state.plan).toMatchObject({ id: planId, title: 'Roots on paper' });
  expect(
    state.rounds.map(({ number, planIndex, phase, voided }) => ({ number, planIndex, phase, voided })),
  ).toEqual(
    [0, 1, 2].map((index) => ({ number: index + 1, planIndex: index, phase: 'revealed', voided: false })),
  );
  const verdicts = state.rounds.map(({ answers }) =>
    [...answers.values()].map(({ by, verdict }) => [
      by,
      verdict.kind === 'slip' ? verdict.cause : verdict.kind,
    ]),
  );
  // Fret 10 is the D of string 6; string 3 one fret high is the short step (computed).
  expect(verdicts.map((some) => some.toSorted())).toEqual([
    [
      ['teacher', 'low-string-map'],
      ['teacher', 'right'],
    ],
    [['teacher', 'short-step']],
    [
      ['teacher', 'right'],
      ['teacher', 'unnamed'],
    ],
  ]);
});

test('PAPER-2, ANSWER-6: what is only marked counts, and makes no slip and no pattern', async () => {
  const marked: Answers = [
    ['root', notYet],
    ['chord', notYet],
    ['box', notYet],
    ['name', notYet],
  ];
  await send({ Kaya: marked, Bram: [...marked.slice(0, 3), ['name', right]] });
  expect((await group()).classes[0]?.share).toEqual({ right: 1, of: 8 });
  const desk = new Screen(server, { role: 'desk', classId: id }, { cookie: teacher.cookie });
  await desk.until(({ desk: view }) => view !== undefined);
  const view = known(desk.desk, 'view');
  desk.close();
  expect(view.closed).toBe(true);
  expect(view.pattern).toBeNull();
  expect(view.students.map(({ pattern }) => pattern)).toEqual([null, null, null]);
  expect(view.score.now).toEqual({ right: 1, of: 8 });
});

test('PAPER-1: levels, names and several places are judged as the exercise has them', async () => {
  await send({
    Kaya: [
      // E, G, B and D on strings 4 to 1: E m7 (computed in standard tuning).
      ['chord', { ...at([4, 2], [3, 0], [2, 3], [1, 0]), level: 2 }],
      ['name', { named: { kind: 'note', note: { letter: 'E', alteration: 0 } } }],
    ],
    Bram: [
      ['chord', at([4, 2], [3, 0], [2, 3], [1, 0])],
      ['name', { named: { kind: 'note', note: { letter: 'F', alteration: 0 } } }],
    ],
  });
  const state = await stored();
  const kinds = (studentName: string) =>
    state.rounds.map(
      ({ answers }) => [...answers].find(([who]) => who === idOf(studentName))?.[1].verdict.kind,
    );
  expect(kinds('Kaya')).toEqual(['right', 'right']);
  expect(kinds('Bram')).toEqual(['slip', 'slip']);
});

test('PAPER-3: the same results again change nothing, also after a restart', async () => {
  const results = { Kaya: [['root', at([2, 3])]] } as const;
  await send(results);
  await send(results);
  await server.restart();
  const again = await send({ Kaya: [['root', at([2, 5])]] });
  expect(again).toEqual({ status: 200, body: { id, before: true } });
  const { classes } = await group();
  expect(classes).toHaveLength(1);
  expect(classes[0]?.share).toEqual({ right: 1, of: 1 });
  const other = await teacher.makeGroup(['Farid']);
  const plan = await teacher.call<{ id: string }>('POST', `groups/${other}/plans`, {
    title: 'Others',
    exercises: [{ id: 'root', exercise: find('D'), seconds: null }],
  });
  const { body: theirs } = await teacher.call<Group>('GET', `groups/${other}`);
  const taken = await teacher.call<{ error?: { code: string } }>('POST', `plans/${plan.body.id}/paper`, {
    id,
    revision: 1,
    at: day,
    results: [{ studentId: theirs.students[0]?.id, answers: [{ exerciseId: 'root', ...at([2, 3]) }] }],
  });
  expect(taken.body.error?.code).toBe('not-allowed');
});

test('PAPER-4: refused is what can’t be an answer, and then nothing of it is kept', async () => {
  const good = ['root', at([2, 3])] as const;
  const later = Date.now() + 3 * 86_400_000;
  for (const [results, fields, code] of [
    [{ Kaya: [good] }, { at: later }, 'malformed'],
    [{ Kaya: [good] }, { revision: 2 }, 'plan-changed'],
    [{ Kaya: [] }, {}, 'malformed'],
    [{ Kaya: [good], Bram: [['name', at([2, 3])]] }, {}, 'places-not-asked'],
    [{ Kaya: [good], Bram: [['chord', { ...at([2, 3]), level: 3 }]] }, {}, 'level-unknown'],
    [{ Kaya: [good], Bram: [['chord', { ...at([2, 3]), ...right }]] }, {}, 'malformed'],
    [{ Kaya: [good] }, { id: 'short' }, 'malformed'],
  ] as const) {
    const { body } = await send(results, fields);
    expect([code, body.error?.code]).toEqual([code, code]);
  }
  const { body } = await teacher.call<{ error?: { code: string } }>('POST', `plans/${planId}/paper`, {
    ...{ id, revision: 1, at: day },
    results: [{ studentId: 'somebody-else', answers: [{ exerciseId: 'root', ...at([2, 3]) }] }],
  });
  expect(body.error?.code).toBe('student-unknown');
  expect((await group()).classes).toEqual([]);
});

test('PAPER-1: the next class is held against what came on paper', async () => {
  const { classId, desk } = await teacher.openClass(groupId);
  for (const command of [
    { kind: 'ask', exercise: find('F'), seconds: null },
    { kind: 'hold' },
    { kind: 'reveal' },
  ])
    expect(await desk.ask(command)).toEqual({ ok: true });
  await desk.until(({ desk: view }) => view?.score.rows.length === 1);
  expect(desk.desk?.score.rows[0]?.before).toBeNull();
  await send({ Kaya: [['root', at([2, 3])]], Bram: [['root', notYet]] });
  await desk.until(({ desk: view }) => view?.score.rows[0]?.before?.of === 2);
  expect(desk.desk?.score.rows[0]?.before).toEqual({ right: 1, of: 2 });
  desk.close();
  expect((await group()).classes.map((one) => one.id)).toEqual([classId, id]);
});
