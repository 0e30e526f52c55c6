import { setTimeout as after } from 'node:timers/promises';
import { SimulatedGroup } from './group.mjs';
import * as material from './material.mjs';
import { startServer } from './server.mjs';
import { Teacher } from './teacher.mjs';

const { players } = material;
const server = await startServer();
const ending = new AbortController();
let group;

async function end(status) {
  if (ending.signal.aborted) return;
  ending.abort();
  group?.leave();
  await server.stop();
  process.exit(status);
}
process.on('SIGINT', () => void end(0));
process.on('SIGTERM', () => void end(0));
void server.gone.then(() => end(1));

try {
  await play();
} catch (error) {
  // A demo that is being stopped loses its connections in the middle of things.
  if (!ending.signal.aborted) {
    process.stderr.write(`The demo broke off: ${error.message}\n`);
    await end(1);
  }
}

async function play() {
  const passphrase = material.newPassphrase();
  const teacher = new Teacher(server.url);
  await teacher.post('set-up', { token: server.token, name: material.teacherName, passphrase });
  const { groupId, planId } = await prepare(teacher);
  await holdLastClass(teacher, groupId, planId);

  const desk = await teacher.openClass(groupId, planId);
  group = new SimulatedGroup(server.url, desk, { pace: 18, slipShare: 0.4, players });
  for (const name of material.regulars) await group.add(name);
  await desk.do({ kind: 'ask-planned', seconds: null });
  process.stdout.write(words(desk.view, passphrase));

  await after(12_000, undefined, { signal: ending.signal });
  if (!desk.view.closed) await group.add(material.latecomer);
  await after(8_000, undefined, { signal: ending.signal });
  if (!desk.view.closed) await group.add(material.newcomer);
}

async function prepare(teacher) {
  const { id: groupId } = await teacher.post('groups', {
    name: material.groupName,
    school: material.school,
    instrument: 'guitar',
    naming: 'english',
    language: 'en',
    purgeAt: Date.now() + 365 * 24 * 3_600_000,
  });
  const names = [...material.regulars, material.latecomer, material.guest];
  await teacher.post(`groups/${groupId}/students`, { names });
  const { id: planId } = await teacher.post(`groups/${groupId}/plans`, material.plan);
  return { groupId, planId };
}

/** A class that is over already, in a few seconds: today's score is held against it. */
async function holdLastClass(teacher, groupId, planId) {
  const desk = await teacher.openClass(groupId, planId);
  group = new SimulatedGroup(server.url, desk, { pace: 0.5, slipShare: 0.55, players });
  // Today's class starts as this one.
  await desk.do({ kind: 'set-class', settings: { ...desk.view.settings, playing: 'on' } });
  for (const name of material.regulars) await group.add(name);
  for (let asked = 1; asked <= material.metBefore; asked += 1) {
    await desk.do({ kind: 'ask-planned', seconds: null });
    // One student of the group gives no answer.
    const expected = material.regulars.length - 1;
    await desk.until(
      ({ rounds, students }) =>
        rounds.length === asked && students.filter(({ answer }) => answer?.done).length >= expected,
    );
    for (const kind of ['hold', 'reveal', 'next']) await desk.do({ kind });
  }
  await desk.do({ kind: 'close' });
  group.leave();
  desk.close();
}

function words({ classId, code }, passphrase) {
  const [address] = server.addresses;
  const here = server.addresses.find((one) => new URL(one).hostname === 'localhost') ?? address;
  const stands = [...new Set([here, address])].map((one) => `${one}/join/${code}`).join('  or  ');
  return `
A class of the invented group ${material.groupName} is open. ${material.regulars.length} simulated students are answering.

Desk    ${here}/desk/class/${classId}
        name: ${material.teacherName}   passphrase: ${passphrase}
Board   ${here}/board/${code}
Stand   ${stands}
        name: ${material.guest}

Open all three side by side. At the Desk press H to hold, R to reveal, N for the next exercise, A to ask it.
The students answer whatever you ask, also on the spot. One comes late; one new name asks to be let in.

Data folder: ${server.dataDir}, made anew at each start. Ctrl-C ends the demo.
`;
}
