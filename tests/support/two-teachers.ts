import Sqlite from 'better-sqlite3';
import { hashToken, newToken } from '../../server/secrets.ts';
import { openStore } from '../../server/store/sqlite/open-store.ts';
import type { Store } from '../../server/store/store.ts';
import { sessionCookie } from '../../server/routes/guard.ts';
import { known } from '../../shared/lib/assert.ts';
import type { TeacherId, Time } from '../../shared/protocol/ids.ts';
import { find } from './exercises.ts';
import { LiveServer } from './live-server.ts';
import { type Screen, sit, TeacherBrowser } from './people.ts';

/** One teacher's things, with a class in which a round is open. */
export interface House {
  readonly teacher: TeacherBrowser;
  readonly teacherId: TeacherId;
  readonly groupId: string;
  readonly planId: string;
  readonly classId: string;
  readonly desk: Screen;
  readonly code: string;
  readonly studentId: string;
  readonly roundId: string;
  /** A device that was let in, and one that asks. */
  readonly stand: Screen;
  readonly asking: Screen;
  readonly askingSeatId: string;
}

/** A server with two teachers who know nothing of each other. */
export class TwoTeachers {
  readonly server: LiveServer;
  readonly ours: House;
  readonly theirs: House;
  readonly #otherProcess: Store;

  private constructor(server: LiveServer, ours: House, theirs: House) {
    this.server = server;
    this.ours = ours;
    this.theirs = theirs;
    this.#otherProcess = openStore({ path: server.storePath });
  }

  static async start(): Promise<TwoTeachers> {
    const server = await LiveServer.start();
    const teacher = new TeacherBrowser(server);
    await teacher.setUp();
    const { link } = (await teacher.call<{ link: string }>('POST', 'invitations', {})).body;
    const colleague = new TeacherBrowser(server);
    const token = link.split('#')[1];
    await colleague.call('POST', 'set-up', { token, name: 'Ines', passphrase: 'nine long strings' });
    return new TwoTeachers(server, await furnish(server, teacher), await furnish(server, colleague));
  }

  /** All that the store holds, as text. */
  rows(): string {
    const connection = new Sqlite(this.server.storePath, { readonly: true });
    try {
      const names = connection.prepare("select name from sqlite_schema where type = 'table'").pluck().all();
      return JSON.stringify(
        names.map((name) => [name, connection.prepare(`select * from ${String(name)}`).all()]),
      );
    } finally {
      connection.close();
    }
  }

  /** A session of our teacher on one more browser; `end` is what another process does to it. */
  async session(life = 60_000): Promise<{ cookie: string; end: () => Promise<void> }> {
    const token = newToken();
    const tokenHash = hashToken(token);
    const expiresAt = (Date.now() + life) as Time;
    await this.#otherProcess.teachers.openSession({ tokenHash, teacherId: this.ours.teacherId, expiresAt });
    return {
      cookie: `${sessionCookie}=${token}`,
      end: () => this.#otherProcess.teachers.closeSession(tokenHash),
    };
  }

  async stop(): Promise<void> {
    for (const { desk, stand, asking } of [this.ours, this.theirs])
      for (const screen of [desk, stand, asking]) screen.close();
    await this.#otherProcess.close();
    await this.server.stop();
  }
}

async function furnish(server: LiveServer, teacher: TeacherBrowser): Promise<House> {
  const me = await teacher.call<{ teacher: { id: TeacherId } }>('GET', 'me');
  const groupId = await teacher.makeGroup(['Kaya', 'Bram']);
  const exercises = [{ exercise: find('D'), seconds: null }];
  const plan = await teacher.call<{ id: string }>('POST', `groups/${groupId}/plans`, {
    title: 'Roots',
    exercises,
  });
  const { classId, desk } = await teacher.openClass(groupId);
  const code = known(desk.desk, 'view').code;
  const stand = await sit(server, code, 'Kaya');
  const asking = await sit(server, code, 'Hani');
  await desk.ask({ kind: 'ask', exercise: find('D'), seconds: null });
  await desk.until(({ desk: view }) => view?.rounds.length === 1 && view.asking.length === 1);
  const view = known(desk.desk, 'view');
  return {
    teacher,
    teacherId: me.body.teacher.id,
    groupId,
    planId: plan.body.id,
    classId,
    desk,
    code,
    studentId: known(
      view.students.find(({ name }) => name === 'Kaya'),
      'Kaya',
    ).id,
    roundId: known(view.rounds[0], 'round').id,
    stand,
    asking,
    askingSeatId: known(view.asking[0], 'seat').seatId,
  };
}
