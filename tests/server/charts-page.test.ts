import { afterEach, beforeEach, expect, test } from 'vitest';
import type { ChartsView } from '../../shared/protocol/views.ts';
import { build, find, places, scale } from '../support/exercises.ts';
import { LiveServer } from '../support/live-server.ts';
import { sit, TeacherBrowser, type Screen } from '../support/people.ts';

let server: LiveServer;
let teacher: TeacherBrowser;
let desk: Screen;
let groupId: string;
let classId: string;
let screens: Screen[];
/** Every word that the link gave out. */
let heard: string[];

beforeEach(async () => {
  server = await LiveServer.start();
  teacher = new TeacherBrowser(server);
  await teacher.setUp();
  groupId = await teacher.makeGroup(['Kaya', 'Bram']);
  ({ classId, desk } = await teacher.openClass(groupId));
  screens = [desk];
  heard = [];
});

afterEach(async () => {
  for (const screen of screens) screen.close();
  await server.stop();
});

/** What somebody with the link is given, without a session. */
async function look(id = classId): Promise<{ readonly status: number; readonly charts: ChartsView }> {
  const response = await fetch(`${server.url}/api/charts/${id}`);
  const text = await response.text();
  heard.push(text);
  return { status: response.status, ...(JSON.parse(text) as { charts: ChartsView }) };
}

const titles = async () =>
  (await look()).charts.exercises.map(({ exercise, harder }) =>
    [exercise, ...harder].map(({ kind, root }) => `${kind} ${root.letter}`).join(' | '),
  );

async function ask(command: object): Promise<void> {
  expect(await desk.ask(command)).toEqual({ ok: true });
}

async function play(command: object): Promise<void> {
  for (const kind of ['hold', 'reveal', 'next']) {
    if (kind === 'hold') await ask(command);
    await ask({ kind });
  }
}

const askD = { kind: 'ask', exercise: find('D'), seconds: null };

test('CHARTS-PAGE-1: the link gives what was revealed, in order, each exercise once with its levels', async () => {
  expect(await titles()).toEqual([]);
  await play(askD);
  await play({ kind: 'ask', exercise: build('E', 'minor'), harder: [build('C', 'major')], seconds: null });
  await play(askD);
  expect(await titles()).toEqual(['find D', 'build E | build C']);
  await ask({ kind: 'close' });
  expect(await titles()).toEqual(['find D', 'build E | build C']);
  const { charts } = await look();
  expect(Object.keys(charts).sort()).toEqual(['exercises', 'instrument', 'naming', 'openedAt', 'title']);
  expect(charts).toMatchObject({ title: null, instrument: 'guitar', naming: 'english' });
});

test('CHARTS-PAGE-1: the plan gives its title, and nothing of what is still to come', async () => {
  const exercises = [scale('A', 'minor-pentatonic', 1, 10), find('F')].map((exercise) => ({
    exercise,
    seconds: null,
  }));
  const plan = { title: 'Boxes from string 2', aim: 'An aim', points: ['A point'], exercises };
  const { body } = await teacher.call<{ id: string }>('POST', `groups/${groupId}/plans`, plan);
  await ask({ kind: 'use-plan', planId: body.id });
  await play({ kind: 'ask-planned', seconds: null });
  expect((await look()).charts.title).toBe('Boxes from string 2');
  expect(await titles()).toEqual(['scale A']);
  expect(heard.join()).not.toMatch(/An aim|A point|"letter":"F"/);
});

test('CHARTS-PAGE-2, VIEW-2: nothing before the reveal, and nothing of a round that was voided', async () => {
  const kaya = await sit(server, desk.desk?.code ?? '', 'Kaya');
  screens.push(kaya);
  await ask({ kind: 'ask', exercise: build('E', 'minor'), seconds: null });
  await kaya.until(({ shared }) => shared?.stage.kind === 'open');
  await desk.until(({ desk: view }) => view?.rounds.length === 1);
  expect(await titles()).toEqual([]);
  const answer = { sendId: 'kaya-1', places: places([3, 4], [2, 5], [1, 3]), done: true };
  await kaya.give({ kind: 'place', roundId: desk.desk?.rounds[0]?.id, ...answer });
  expect(await titles()).toEqual([]);
  await ask({ kind: 'hold' });
  expect(await titles()).toEqual([]);
  expect(heard.filter((text) => /quality|"root"|"exercise"|fret/.test(text))).toEqual([]);
  await ask({ kind: 'reveal' });
  expect(await titles()).toEqual(['build E']);
  await ask({ kind: 'void' });
  expect(await titles()).toEqual([]);
  await ask({ kind: 'undo' });
  expect(await titles()).toEqual(['build E']);
  const { students = [] } = desk.desk ?? {};
  for (const secret of ['Kaya', 'Bram', 'Thursday', 'Alderwick', 'kaya-1', 'share', 'verdict', 'answers'])
    expect(heard.join()).not.toContain(secret);
  for (const { id } of students) expect(heard.join()).not.toContain(id);
});

test('CHARTS-PAGE-2: what is being asked again waits for its reveal again', async () => {
  await play(askD);
  await play({ kind: 'ask', exercise: find('F'), seconds: null });
  await ask({ kind: 'ask', exercise: find('A'), harder: [find('D')], seconds: null });
  expect(await titles()).toEqual(['find F']);
  await ask({ kind: 'hold' });
  expect(await titles()).toEqual(['find F']);
  await ask({ kind: 'reveal' });
  expect(await titles()).toEqual(['find D', 'find F', 'find A | find D']);
});

test('CHARTS-PAGE-3: without the class there is a sentence, and the charts go with their group', async () => {
  await play(askD);
  expect((await look('no-such-class')).status).toBe(404);
  expect(heard.at(-1)).toContain('There are no charts here.');
  desk.close();
  await teacher.call('DELETE', `groups/${groupId}`);
  expect((await look()).status).toBe(404);
});

test('CHARTS-PAGE-3: an address that tries many links has to wait; nothing of it is stored on the way', async () => {
  const first = await fetch(`${server.url}/api/charts/${classId}`);
  expect(first.headers.get('cache-control')).toBe('no-store');
  for (let tries = 0; tries < 60; tries += 1) await look(`made-up-${String(tries)}`);
  expect((await look()).status).toBe(429);
});
