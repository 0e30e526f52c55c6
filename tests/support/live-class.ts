import { expect } from 'vitest';
import type { Answer } from '../../shared/exercise/answer.ts';
import type { Exercise } from '../../shared/exercise/exercise.ts';
import type { CommandReply } from '../../shared/protocol/events.ts';
import type { DeskAnswerView, DeskStudentView } from '../../shared/protocol/views.ts';
import { known } from '../../shared/lib/assert.ts';
import { LiveServer, type LiveServerOptions } from './live-server.ts';
import { Screen, sit, TeacherBrowser } from './people.ts';

/** One class on a server of its own: its Desk, its Board, and whoever takes a seat. */
export class LiveClass {
  readonly server: LiveServer;
  readonly teacher: TeacherBrowser;
  readonly groupId: string;
  readonly desk: Screen;
  readonly board: Screen;
  readonly #stands: Screen[] = [];
  #sends = 0;

  private constructor(server: LiveServer, teacher: TeacherBrowser, groupId: string, desk: Screen) {
    this.server = server;
    this.teacher = teacher;
    this.groupId = groupId;
    this.desk = desk;
    this.board = new Screen(server, { role: 'board', code: desk.desk?.code ?? '' });
  }

  static async start(instrument?: string, options: LiveServerOptions = {}): Promise<LiveClass> {
    const server = await LiveServer.start(options);
    const teacher = new TeacherBrowser(server);
    await teacher.setUp();
    const groupId = await teacher.makeGroup(['Kaya', 'Bram', 'Edda'], instrument);
    const { desk } = await teacher.openClass(groupId);
    const live = new LiveClass(server, teacher, groupId, desk);
    await live.board.until(({ board }) => board !== undefined);
    return live;
  }

  /** Everybody who must not know: Stands and Board. */
  get others(): readonly Screen[] {
    return [...this.#stands, this.board];
  }

  get roundId(): string {
    return this.desk.desk?.rounds.at(-1)?.id ?? '';
  }

  async seat(name: string): Promise<Screen> {
    const stand = await sit(this.server, this.desk.desk?.code ?? '', name);
    this.#stands.push(stand);
    return stand;
  }

  student(name: string): DeskStudentView {
    return known(
      this.desk.desk?.students.find((student) => student.name === name),
      name,
    );
  }

  /** A student's answer, once the Desk has heard of it. */
  async answerOf(name: string): Promise<DeskAnswerView> {
    await this.desk.until(() => this.student(name).answer !== null);
    return known(this.student(name).answer, name);
  }

  /** The server starts anew on the same store; resolves once Desk and Stands have heard from it. */
  async restart(): Promise<void> {
    this.desk.desk = undefined;
    for (const stand of this.#stands) stand.own = undefined;
    await this.server.restart();
    await this.desk.until(({ desk }) => desk !== undefined);
    for (const stand of this.#stands) await stand.until(({ own }) => own !== undefined);
  }

  /** Asks; resolves once Desk, Board and every Stand have heard of it. */
  async ask(exercise: Exercise, ...harder: readonly Exercise[]): Promise<void> {
    const before = this.roundId;
    expect(await this.desk.ask({ kind: 'ask', exercise, harder, seconds: null })).toEqual({ ok: true });
    await this.desk.until(() => this.roundId !== before);
    await this.#all('open');
  }

  give(stand: Screen, answer: Answer | object): Promise<CommandReply> {
    this.#sends += 1;
    const sendId = `send-${String(this.#sends)}`;
    return stand.give({
      kind: 'place',
      roundId: this.roundId,
      sendId,
      places: [],
      ...answer,
      done: true,
    });
  }

  async hold(): Promise<void> {
    await this.desk.ask({ kind: 'hold' });
    await this.#all('held');
  }

  async reveal(): Promise<void> {
    await this.desk.ask({ kind: 'reveal' });
    await this.desk.until(({ desk }) => desk?.rounds.at(-1)?.phase === 'revealed');
    await this.#all('revealed');
  }

  async next(): Promise<void> {
    await this.desk.ask({ kind: 'next' });
    for (const stand of this.#stands) await stand.until(({ shared }) => shared?.stage.kind === 'rest');
    await this.board.until(({ board }) => board?.stage.kind === 'score');
  }

  async #all(stage: 'open' | 'held' | 'revealed'): Promise<void> {
    for (const stand of this.#stands) await stand.until(({ shared }) => shared?.stage.kind === stage);
    await this.board.until(({ board }) => board?.stage.kind === stage);
  }

  async stop(): Promise<void> {
    for (const screen of [...this.others, this.desk]) screen.close();
    await this.server.stop();
  }
}

/** A class in which two have taken their seats: of what one gives the other must learn nothing. */
export async function classOfTwo() {
  const live = await LiveClass.start();
  return { live, kaya: await live.seat('Kaya'), bram: await live.seat('Bram') };
}
