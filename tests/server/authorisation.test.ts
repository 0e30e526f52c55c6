import type { Router } from 'express';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { deskCommandSchema, standCommandSchema } from '../../shared/protocol/commands.ts';
import type { DeskCommand, StandCommand } from '../../shared/protocol/commands.ts';
import type { ErrorCode, ErrorReply } from '../../shared/protocol/errors.ts';
import { find } from '../support/exercises.ts';
import { Screen } from '../support/people.ts';
import { type House, TwoTeachers } from '../support/two-teachers.ts';

let two: TwoTeachers;
beforeAll(async () => {
  two = await TwoTeachers.start();
});
afterAll(() => two.stop());

interface Row {
  readonly path: (house: House) => string;
  readonly body?: object;
  /**
   * `own`: only who it belongs to · `teacher`: every teacher, for themselves · a code: anybody may try, and this is
   * what comes of it · `open`: anybody, and it gives nothing away.
   */
  readonly who: 'own' | 'teacher' | 'open' | ErrorCode;
}

const passphrase = 'seven short steps';
const group = {
  name: 'Other Strings',
  school: '',
  instrument: 'guitar',
  naming: 'english',
  language: 'en',
  purgeAt: null,
};
const plan = { title: 'Other', exercises: [] };

/** Every resource: method and path as the server has them. */
const table: Readonly<Record<string, Row>> = {
  'GET /me': { path: () => 'me', who: 'open' },
  'POST /set-up': {
    path: () => 'set-up',
    body: { token: 'made-up', name: 'Orla', passphrase },
    who: 'set-up-link-spent',
  },
  'POST /sign-in': {
    path: () => 'sign-in',
    body: { name: 'Mara', passphrase: 'not this one' },
    who: 'sign-in-refused',
  },
  'POST /sign-out': { path: () => 'sign-out', body: {}, who: 'open' },
  'POST /sign-out-everywhere': { path: () => 'sign-out-everywhere', body: {}, who: 'teacher' },
  'POST /invitations': { path: () => 'invitations', body: {}, who: 'teacher' },
  'GET /addresses': { path: () => 'addresses', who: 'teacher' },
  'PUT /addresses': { path: () => 'addresses', body: { chosen: 'http://localhost' }, who: 'teacher' },
  'GET /groups': { path: () => 'groups', who: 'teacher' },
  'POST /groups': { path: () => 'groups', body: group, who: 'teacher' },
  'GET /groups/:id': { path: ({ groupId }) => `groups/${groupId}`, who: 'own' },
  'PATCH /groups/:id': { path: ({ groupId }) => `groups/${groupId}`, body: { name: 'Mine' }, who: 'own' },
  'DELETE /groups/:id': { path: ({ groupId }) => `groups/${groupId}`, who: 'own' },
  'POST /groups/:id/students': {
    path: ({ groupId }) => `groups/${groupId}/students`,
    body: { names: ['Orla'] },
    who: 'own',
  },
  'PATCH /students/:id': {
    path: ({ studentId }) => `students/${studentId}`,
    body: { name: 'Orla' },
    who: 'own',
  },
  'DELETE /students/:id': { path: ({ studentId }) => `students/${studentId}`, who: 'own' },
  'POST /students/:id/merge': {
    path: ({ studentId }) => `students/${studentId}/merge`,
    body: { into: 'somebody' },
    who: 'own',
  },
  'POST /groups/:id/plans': { path: ({ groupId }) => `groups/${groupId}/plans`, body: plan, who: 'own' },
  'GET /plans/:id': { path: ({ planId }) => `plans/${planId}`, who: 'own' },
  'PUT /plans/:id': {
    path: ({ planId }) => `plans/${planId}`,
    body: { ...plan, revision: 1 },
    who: 'own',
  },
  'DELETE /plans/:id': { path: ({ planId }) => `plans/${planId}`, who: 'own' },
  'POST /plans/:id/paper': {
    path: ({ planId }) => `plans/${planId}/paper`,
    body: { id: 'x'.repeat(22), revision: 1, at: 0, results: [{ studentId: 'somebody', answers: [] }] },
    who: 'own',
  },
  'GET /charts/:classId': { path: ({ classId }) => `charts/${classId}`, who: 'open' },
  'POST /groups/:id/classes': {
    path: ({ groupId }) => `groups/${groupId}/classes`,
    body: { planId: null },
    who: 'own',
  },
  'POST /join': { path: () => 'join', body: { code: 'BBBBBB', name: 'Kaya' }, who: 'unknown-code' },
};

const rows = Object.entries(table).map(([name, row]) => ({ name, ...row }));
const guarded = rows.filter(({ who }) => who === 'own' || who === 'teacher');
const writes = rows.filter(({ name }) => !name.startsWith('GET'));

interface Layer {
  readonly route?: {
    readonly path: string;
    readonly stack: readonly { readonly method: string }[];
  };
  readonly handle: { readonly stack?: readonly Layer[] };
}

function routesOf({ stack = [] }: { readonly stack?: readonly Layer[] }): readonly string[] {
  return stack.flatMap(({ route, handle }) =>
    route ? route.stack.map(({ method }) => `${method.toUpperCase()} ${route.path}`) : routesOf(handle),
  );
}

function kindsOf(schema: { readonly options: readonly { entries: { kind: { literal: string } } }[] }) {
  return schema.options.map(({ entries }) => entries.kind.literal).sort();
}

interface Said {
  readonly status: number;
  readonly text: string;
  readonly error: ErrorReply | undefined;
}

async function call(row: Row & { readonly name: string }, headers: Record<string, string>): Promise<Said> {
  const response = await fetch(`${two.server.url}/api/${row.path(two.ours)}`, {
    method: row.name.split(' ')[0] ?? '',
    headers: { 'content-type': 'application/json', ...headers },
    ...(row.body ? { body: JSON.stringify(row.body) } : {}),
  });
  const text = await response.text();
  const said = JSON.parse(text) as { error?: ErrorReply };
  return { status: response.status, text, error: said.error };
}

/** Refused with a code and a sentence, and nothing in the store is changed. */
async function refused(code: ErrorCode, attempt: () => Promise<{ error?: ErrorReply | undefined }>) {
  const before = two.rows();
  const { error } = await attempt();
  expect(error?.code).toBe(code);
  expect(error?.message).toMatch(/^[A-Z].*\.$/);
  expect(two.rows()).toBe(before);
}

const ourCookie = () => two.ours.teacher.cookie;

test('AUTH-1: the tables below hold every resource and every command', () => {
  expect([...routesOf(two.server.api as Router as { stack: Layer[] })].sort()).toEqual(
    rows.map(({ name }) => name).sort(),
  );
  expect(kindsOf(deskCommandSchema)).toEqual(Object.keys(deskCommands(two.ours)).sort());
  expect(kindsOf(standCommandSchema)).toEqual(Object.keys(standCommands(two.ours)).sort());
});

describe('AUTH-1: resources', () => {
  test.each(guarded)('$name is not for nobody', async (row) => {
    await refused('not-signed-in', () => call(row, {}));
  });

  test.each(guarded)('$name is not for a made-up session', async (row) => {
    await refused('not-signed-in', () => call(row, { cookie: 'rootcall-desk=made-up' }));
  });

  test.each(guarded)(
    '$name is not for a session that was ended, nor for one whose time is over',
    async (row) => {
      const ended = await two.session();
      await ended.end();
      await refused('not-signed-in', () => call(row, { cookie: ended.cookie }));
      const over = await two.session(-1);
      await refused('not-signed-in', () => call(row, { cookie: over.cookie }));
    },
  );

  test.each(guarded.filter(({ who }) => who === 'own'))('$name is not for another teacher', async (row) => {
    await refused('not-allowed', () => call(row, { cookie: two.theirs.teacher.cookie }));
  });

  test.each(guarded.filter(({ who }) => who === 'own'))(
    '$name says nothing to nobody about what exists',
    async (row) => {
      const nowhere = {
        ...row,
        path: () => row.path({ ...two.ours, groupId: 'x', planId: 'x', studentId: 'x' }),
      };
      await refused('not-signed-in', () => call(nowhere, {}));
      await refused('not-found', () => call(nowhere, { cookie: ourCookie() }));
    },
  );

  test.each(rows.filter(({ who }) => who !== 'own' && who !== 'teacher' && who !== 'open'))(
    '$name ends in $who for nobody',
    async (row) => {
      await refused(row.who as ErrorCode, () => call(row, {}));
    },
  );

  test.each(rows.filter(({ who }) => who === 'open'))('$name tells nobody nothing', async (row) => {
    const before = two.rows();
    const { status, text } = await call(row, {});
    expect(status).toBe(200);
    expect(text).not.toMatch(/Mara|Ines|Kaya/);
    expect(two.rows()).toBe(before);
  });

  test('GET /groups holds one’s own groups only', async () => {
    const { body } = await two.theirs.teacher.call<object>('GET', 'groups');
    expect(JSON.stringify(body)).toContain(two.theirs.groupId);
    expect(JSON.stringify(body)).not.toContain(two.ours.groupId);
  });
});

describe('AUTH-2: no other site can write in a teacher’s name', () => {
  test.each(writes)('$name is not taken from another origin', async (row) => {
    for (const origin of [
      'https://elsewhere.example',
      'null',
      two.server.url.replace('http:', 'ftp:').replace(/\d+$/, '1'),
    ])
      await refused('not-allowed', () => call(row, { cookie: ourCookie(), origin }));
    await refused('not-allowed', () => call(row, { cookie: ourCookie(), 'sec-fetch-site': 'cross-site' }));
  });

  test.each(writes.filter(({ name }) => !name.startsWith('DELETE')))(
    '$name is not taken in a form that another site can send',
    async (row) => {
      for (const type of [
        'text/plain',
        'application/x-www-form-urlencoded',
        'multipart/form-data; boundary=x',
        '',
      ])
        await refused('malformed', () => call(row, { cookie: ourCookie(), 'content-type': type }));
    },
  );

  test('a socket is not opened from another origin', async () => {
    const headers = { cookie: ourCookie(), origin: 'https://elsewhere.example' };
    const screen = new Screen(two.server, { role: 'desk', classId: two.ours.classId }, headers);
    await screen.refusal();
    expect(screen.heard).toEqual([]);
    screen.close();
  });
});

const answer = { places: [{ string: 2, fret: 3 }] };

function deskCommands(house: House): Readonly<Record<DeskCommand['kind'], object>> {
  const { studentId, roundId } = house;
  return {
    'use-plan': { planId: house.planId },
    select: { index: 0 },
    'ask-planned': { seconds: null },
    ask: { exercise: find('C'), seconds: null },
    'ask-again': {},
    hold: {},
    reveal: {},
    next: {},
    void: {},
    undo: {},
    'show-charts': { charts: [find('C'), find('D')] },
    'show-step': { at: 0 },
    'show-taps': { places: [] },
    'show-nothing': {},
    admit: { seatId: house.askingSeatId },
    'admit-new': {},
    refuse: { seatId: house.askingSeatId },
    remove: { studentId },
    'set-student': { studentId, name: 'Orla', moreTime: 2 },
    'give-turn': { studentId },
    enter: { studentId, ...answer },
    accept: { roundId, studentId, accepted: true },
    'count-late': { roundId, studentId, counted: true },
    'set-class': { settings: { autoAdmit: true, score: 'off', ranking: true } },
    close: {},
  };
}

function standCommands({ roundId }: House): Readonly<Record<StandCommand['kind'], object>> {
  return {
    place: { roundId, sendId: 'send-1', ...answer, done: true },
    leave: {},
    'set-alias': { alias: 'Lantern' },
  };
}

const deskKinds = kindsOf(deskCommandSchema) as DeskCommand['kind'][];
const standKinds = kindsOf(standCommandSchema) as StandCommand['kind'][];

async function emit(screen: Screen, event: 'desk:command' | 'stand:command', command: object) {
  const reply = event === 'desk:command' ? await screen.ask(command) : await screen.give(command);
  return reply.ok ? {} : reply;
}

async function refusedAtTheDoor(code: ErrorCode, auth: object, headers: Record<string, string> = {}) {
  const before = two.rows();
  const screen = new Screen(two.server, auth, headers);
  expect(await screen.refusal()).toBe(code);
  expect(screen.heard).toEqual([]);
  screen.close();
  expect(two.rows()).toBe(before);
}

describe('AUTH-3: commands of a Desk', () => {
  test('no Desk opens for nobody, another teacher, or a session that was ended', async () => {
    const auth = { role: 'desk', classId: two.ours.classId };
    await refusedAtTheDoor('not-signed-in', auth);
    await refusedAtTheDoor('not-allowed', auth, { cookie: two.theirs.teacher.cookie });
    const session = await two.session();
    await session.end();
    await refusedAtTheDoor('not-signed-in', auth, { cookie: session.cookie });
  });

  test.each(deskKinds)('%s is not for a student of this class, of another one, or a Board', async (kind) => {
    const command = { kind, ...deskCommands(two.ours)[kind] };
    for (const stand of [two.ours.stand, two.ours.asking, two.theirs.stand])
      await refused('not-allowed', () => emit(stand, 'desk:command', command));
    const board = new Screen(two.server, { role: 'board', code: two.ours.code });
    await refused('not-allowed', () => emit(board, 'desk:command', command));
    board.close();
  });

  test.each(deskKinds)('%s is not for a Desk whose session another process ended', async (kind) => {
    const session = await two.session();
    const desk = new Screen(
      two.server,
      { role: 'desk', classId: two.ours.classId },
      { cookie: session.cookie },
    );
    await desk.until(({ desk: view }) => view !== undefined);
    const gone = new Promise((resolve) => desk.socket.once('disconnect', resolve));
    await session.end();
    await refused('not-signed-in', () =>
      emit(desk, 'desk:command', { kind, ...deskCommands(two.ours)[kind] }),
    );
    await gone;
    desk.close();
  });

  test.each([
    ['use-plan', 'not-found'],
    ['admit', 'not-found'],
    ['refuse', 'not-found'],
    ['remove', 'student-unknown'],
    ['set-student', 'student-unknown'],
    ['enter', 'student-unknown'],
    ['accept', 'round-unknown'],
    ['count-late', 'not-found'],
  ] as const)('%s reaches nothing of another teacher’s class', async (kind, code) => {
    await refused(code, () =>
      emit(two.theirs.desk, 'desk:command', { kind, ...deskCommands(two.ours)[kind] }),
    );
  });
});

describe('AUTH-4: commands of a Stand', () => {
  test('no Stand opens for a made-up token, and no Board for a made-up code', async () => {
    await refusedAtTheDoor('seat-unknown', { role: 'stand', token: 'made-up' });
    await refusedAtTheDoor('unknown-code', { role: 'board', code: 'BBBBBB' });
  });

  test.each(standKinds)('%s is not for a Desk or a Board', async (kind) => {
    const command = { kind, ...standCommands(two.ours)[kind] };
    const board = new Screen(two.server, { role: 'board', code: two.ours.code });
    for (const screen of [two.ours.desk, two.theirs.desk, board])
      await refused('not-allowed', () => emit(screen, 'stand:command', command));
    board.close();
  });

  test('place reaches no round of another class', async () => {
    const command = { kind: 'place', ...standCommands(two.ours).place };
    await refused('round-unknown', () => emit(two.theirs.stand, 'stand:command', command));
  });

  test.each(['place', 'set-alias'] as const)('%s is not for who has not been let in', async (kind) => {
    const command = { kind, ...standCommands(two.ours)[kind] };
    await refused('not-admitted', () => emit(two.ours.asking, 'stand:command', command));
  });

  test.each(standKinds)('%s is not for who was sent away', async (kind) => {
    const { stand, desk, studentId } = two.theirs;
    await desk.ask({ kind: 'remove', studentId });
    await refused('seat-unknown', () =>
      emit(stand, 'stand:command', { kind, ...standCommands(two.theirs)[kind] }),
    );
  });
});
