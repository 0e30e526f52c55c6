import { once } from 'node:events';
import { existsSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { describe, expect, it, onTestFinished } from 'vitest';
import { known } from '../../shared/lib/assert.ts';
import { place } from '../../shared/theory/fretboard.ts';
import { find } from '../support/exercises.ts';
import { sit, TeacherBrowser, type Screen } from '../support/people.ts';
import { RawLine } from '../support/raw-line.ts';
import { runTypescript } from './store/run-typescript.ts';

const names = Array.from({ length: 12 }, (_, n) => `Seat ${String(n + 1)}`);

describe('a stop in the middle of a round', () => {
  async function start(dataDir: string, port: number) {
    const child = runTypescript('server/main.ts', [], {
      PORT: String(port),
      HOST: '127.0.0.1',
      DATA_DIR: dataDir,
    });
    onTestFinished(() => void child.kill('SIGKILL'));
    const gone = once(child, 'exit');
    for await (const line of createInterface(child.stdout)) {
      const [, found, path = ''] = /http:\/\/localhost:(\d+)(\/desk\S*)/.exec(line) ?? [];
      if (found === undefined) continue;
      const setUpToken = () => Promise.resolve(path.split('#')[1] ?? '');
      return { child, gone, port: Number(found), url: `http://127.0.0.1:${found}`, setUpToken };
    }
    throw new Error('the server did not start');
  }

  it.each(['SIGTERM', 'SIGINT'] as const)(
    'by %s keeps every acknowledged answer, tells the screens, and takes less than 5 s',
    async (signal) => {
      const dataDir = await mkdtemp(join(tmpdir(), 'rootcall-stop-'));
      onTestFinished(() => rm(dataDir, { recursive: true }));
      const server = await start(dataDir, 0);
      const teacher = new TeacherBrowser(server);
      await teacher.setUp();
      const groupId = await teacher.makeGroup(names);
      const { desk } = await teacher.openClass(groupId);
      const code = desk.desk?.code ?? '';
      const stands = await Promise.all(names.map((name) => sit(server, code, name)));
      const screens: readonly Screen[] = [desk, ...stands];
      for (const screen of screens) onTestFinished(() => screen.close());
      const farewells = new Map<Screen, string>();
      for (const screen of screens) screen.socket.on('farewell', (why) => farewells.set(screen, why.code));
      // One that reads no more must hold up nothing.
      const sleeper = new RawLine(server);
      onTestFinished(() => sleeper.end());
      await sleeper.enter({ role: 'board', code }, 'board:view');
      sleeper.stopReading();
      await desk.ask({ kind: 'ask', exercise: find('D'), seconds: null });
      await desk.until((screen) => screen.desk?.rounds.length === 1);
      const roundId = known(desk.desk?.rounds[0]?.id, 'a round');

      const sent = new Map<Screen, number>();
      const acknowledged = new Map<Screen, number>();
      let stopped = false;
      const answer = async (stand: Screen) => {
        for (let n = 1; !stopped; n += 1) {
          sent.set(stand, n);
          const command = { kind: 'place', roundId, sendId: `send-${String(n)}`, done: false };
          const reply = await stand.give({ ...command, places: [place(2, n)] }).catch(() => undefined);
          if (!reply?.ok) return;
          acknowledged.set(stand, n);
        }
      };
      const answering = stands.map(answer);
      await expect.poll(() => acknowledged.size, { interval: 1 }).toBe(stands.length);

      const asked = performance.now();
      server.child.kill(signal);
      server.child.kill(signal);
      expect(await server.gone).toEqual([0, null]);
      expect(performance.now() - asked).toBeLessThan(5000);
      stopped = true;
      expect(screens.map((screen) => farewells.get(screen))).toEqual(screens.map(() => 'server-stopping'));
      // A store that was closed leaves no journal behind.
      expect(existsSync(join(dataDir, 'rootcall.db-wal'))).toBe(false);
      await Promise.all(answering);

      for (const stand of stands) stand.own = undefined;
      await start(dataDir, server.port);
      for (const stand of stands) {
        await stand.until(({ own }) => own !== undefined);
        const kept = stand.own?.answer?.places[0]?.fret ?? 0;
        expect(kept).toBeGreaterThanOrEqual(acknowledged.get(stand) ?? 1);
        expect(kept).toBeLessThanOrEqual(sent.get(stand) ?? 0);
      }
    },
    60_000,
  );
});
