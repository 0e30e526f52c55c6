import Database from 'better-sqlite3';
import { join } from 'node:path';
import { find } from '../support/exercises.ts';
import { openDesk, openStand, wait, type PreparedClass, type RawDesk } from '../support/prepared-class.ts';
import type { Random } from '../support/random.ts';
import type { RawStand } from '../support/raw-stand.ts';
import type { ServerProcess } from '../support/server-process.ts';

interface Send {
  readonly sendId: string;
  readonly fret: number;
}

/** What the check of a round found amiss. */
export interface Finding {
  /** Acknowledged, and not there any more. */
  readonly lost: number;
  /** There more than once, or in place of a later one. */
  readonly wrong: number;
  readonly acknowledged: number;
  /** Acknowledged only when it was sent again after the server was back. */
  readonly resent: number;
}

/**
 * A class that answers without end on real sockets, whatever becomes of the server: what was not acknowledged is sent
 * again under the same id, as a Stand does.
 */
export class AnsweringClass {
  readonly #server: ServerProcess;
  readonly #prepared: PreparedClass;
  readonly #random: Random;
  #roundId = '';
  #sending = false;
  #sends = 0;
  #resent = 0;
  #acknowledged: Send[][] = [];

  constructor(server: ServerProcess, prepared: PreparedClass, random: Random) {
    this.#server = server;
    this.#prepared = prepared;
    this.#random = random;
  }

  /** One round, in whose midst something is done to the server; it must be up again when that resolves. */
  async round(interrupt: () => Promise<void>, longest = 500): Promise<Finding> {
    const { tokens } = this.#prepared;
    const desk = await this.#desk();
    this.#roundId = await desk.ask(find('D'));
    desk.close();
    this.#acknowledged = tokens.map(() => []);
    this.#resent = 0;
    this.#sending = true;
    const students = tokens.map((token, index) => this.#student(token, index));
    await wait(20 + this.#random.below(longest));
    await interrupt();
    this.#sending = false;
    await Promise.all(students);
    const finding = this.#check(await this.#desk());
    return finding;
  }

  #desk(): Promise<RawDesk> {
    return openDesk(this.#server.port, this.#prepared);
  }

  async #student(token: string, index: number): Promise<void> {
    let stand: RawStand | undefined;
    let unsure: Send | undefined;
    while (this.#sending || unsure) {
      const again = unsure !== undefined;
      const send = unsure ?? this.#next(index);
      unsure = send;
      try {
        stand ??= await openStand(this.#server.port, token, { tries: 300 });
        const reply = await stand.send('stand:command', {
          kind: 'place',
          roundId: this.#roundId,
          sendId: send.sendId,
          places: [{ string: 2, fret: send.fret }],
          done: false,
        });
        if (reply.ok) {
          this.#acknowledged[index]?.push(send);
          if (again) this.#resent += 1;
          unsure = undefined;
        } else if (reply.error.code === 'round-unknown') {
          // The store forgot the round itself: everything that was acknowledged in it is lost.
          break;
        }
        await wait((reply.ok ? 20 : 200) + this.#random.below(80));
      } catch {
        stand?.close();
        stand = undefined;
      }
    }
    stand?.close();
  }

  #next(index: number): Send {
    this.#sends += 1;
    return { sendId: `s${String(index)}-${String(this.#sends)}`, fret: this.#random.below(13) };
  }

  /** Holds what the store keeps against what was acknowledged, and lets the class go on. */
  async #check(desk: RawDesk): Promise<Finding> {
    const names = new Map(desk.view.students.map(({ id, name }) => [id as string, name]));
    const store = new Database(join(this.#server.dataDir, 'rootcall.db'), { readonly: true });
    const rows = store
      .prepare<[string], { student_id: string; late: number; send_id: string; seen: string; places: string }>(
        'select * from answers where round_id = ?',
      )
      .all(this.#roundId);
    store.close();
    let [lost, wrong] = [0, 0];
    for (const [index, sends] of this.#acknowledged.entries()) {
      const own = rows.filter(({ student_id }) => names.get(student_id) === `Student ${String(index + 1)}`);
      const seen = own.flatMap((row) => JSON.parse(row.seen) as string[]);
      lost += sends.filter(({ sendId }) => !seen.includes(sendId)).length;
      wrong += seen.length - new Set(seen).size + Math.max(0, own.length - 1);
      const last = sends.at(-1);
      const [kept] = own;
      if (!last || !kept) continue;
      const [place] = JSON.parse(kept.places) as { fret: number }[];
      if (kept.send_id !== last.sendId || place?.fret !== last.fret) wrong += 1;
    }
    const isThere = desk.view.rounds.some(({ id }) => id === this.#roundId);
    for (const kind of isThere ? ['hold', 'reveal', 'next'] : []) {
      const reply = await desk.command({ kind });
      if (!reply.ok) throw new Error(`the class does not go on: ${reply.error.message}`);
    }
    desk.close();
    return { lost, wrong, acknowledged: this.#acknowledged.flat().length, resent: this.#resent };
  }
}
