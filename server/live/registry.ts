import type { ClassId, GroupId } from '../../shared/protocol/ids.ts';
import type { ClassStore } from '../store/store.ts';
import { RunningClass, type ClassTools } from './running-class.ts';

/** The classes in memory; each is loaded from the store once, and can be dropped at any time without loss. */
export class ClassRegistry {
  readonly #tools: ClassTools;
  readonly #store: ClassStore;
  readonly #running = new Map<ClassId, Promise<RunningClass | undefined>>();

  constructor(store: ClassStore, tools: Omit<ClassTools, 'store'>) {
    this.#store = store;
    this.#tools = { ...tools, store };
  }

  /** Takes up every open class; a deadline that passed while the server was down is acted on at once. */
  async start(): Promise<void> {
    for (const id of await this.#store.open()) await this.byId(id);
  }

  byId(id: ClassId): Promise<RunningClass | undefined> {
    const known = this.#running.get(id);
    if (known) return known;
    const loading = this.#load(id);
    this.#running.set(id, loading);
    return loading;
  }

  /** Lets a closed class go once nobody watches it. */
  release(running: RunningClass): void {
    if (running.watched || running.state.closedAt === null) return;
    running.stop();
    this.#running.delete(running.id);
  }

  /** The register or the group's settings were edited. */
  async refresh(groupId: GroupId): Promise<void> {
    for (const running of await this.#ofGroup(groupId)) await running.reload();
  }

  /** The group is gone. */
  async drop(groupId: GroupId): Promise<void> {
    for (const running of await this.#ofGroup(groupId)) {
      running.stop();
      this.#running.delete(running.id);
    }
  }

  async stop(): Promise<void> {
    for (const loading of this.#running.values()) (await loading)?.stop();
    this.#running.clear();
  }

  /** The address on the Board was changed. */
  async redraw(): Promise<void> {
    for (const loading of this.#running.values()) (await loading)?.changed();
  }

  async #load(id: ClassId): Promise<RunningClass | undefined> {
    try {
      const state = await this.#store.load(id);
      if (state) return new RunningClass(state, this.#tools);
    } catch (error) {
      this.#tools.log.error({ error, classId: id }, 'class could not be loaded');
    }
    this.#running.delete(id);
    return undefined;
  }

  async #ofGroup(groupId: GroupId): Promise<readonly RunningClass[]> {
    const all = await Promise.all(this.#running.values());
    return all.filter(
      (running) => running !== undefined && running.state.groupId === groupId,
    ) as RunningClass[];
  }
}
