import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { NoteNaming } from '../../../shared/theory/naming.ts';
import { browserStore } from '../../lib/key-store.ts';

/** How this teacher reads notes on this device: in a naming of their own, or as the group does. */
export type NamingChoice = NoteNaming | 'group';

const entry = 'rootcall.desk.naming';
const choices: readonly NamingChoice[] = ['english', 'german', 'solfege', 'group'];
const store = browserStore(() => localStorage);
const hosts = new Set<ReactiveControllerHost>();

export function namingChoice(): NamingChoice {
  const kept = store.get(entry);
  return choices.find((choice) => choice === kept) ?? 'group';
}

export function chooseNaming(choice: NamingChoice): void {
  store.set(entry, choice);
  for (const host of hosts) host.requestUpdate();
}

/** The naming that a page of the Desk uses; draws it again when the teacher chooses another. */
export class NamingHere implements ReactiveController {
  readonly #host: ReactiveControllerHost;

  constructor(host: ReactiveControllerHost) {
    this.#host = host;
    host.addController(this);
  }

  /** The teacher's own, else that of the group. */
  of(group: NoteNaming): NoteNaming {
    const choice = namingChoice();
    return choice === 'group' ? group : choice;
  }

  hostConnected(): void {
    hosts.add(this.#host);
  }

  hostDisconnected(): void {
    hosts.delete(this.#host);
  }
}
