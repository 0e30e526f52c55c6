import type { ErrorReply } from './errors.ts';
import type { BoardView, DeskView, StandOwnView, StandSharedView } from './views.ts';

/** A snapshot with its number: newer replaces older, nothing is ever patched. */
export interface Snapshot<View> {
  readonly revision: number;
  readonly view: View;
}

/** How the server answers a command: what was done is durable once this arrives. */
export type CommandReply =
  { readonly ok: true; readonly late?: boolean } | { readonly ok: false; readonly error: ErrorReply };

/** The typed events of Socket.IO, server to client. */
export interface ServerEvents {
  /** First word on every connect: the build that the server serves. */
  hello: (greeting: { readonly build: string }) => void;
  /** Last word before the server ends the connection: why. */
  farewell: (why: ErrorReply) => void;
  'stand:shared': (snapshot: Snapshot<StandSharedView>) => void;
  'stand:own': (snapshot: Snapshot<StandOwnView>) => void;
  'board:view': (snapshot: Snapshot<BoardView>) => void;
  'desk:view': (snapshot: Snapshot<DeskView>) => void;
}

/** Client to server; the payload is parsed there. */
export interface ClientEvents {
  'stand:command': (command: unknown, reply: (result: CommandReply) => void) => void;
  'desk:command': (command: unknown, reply: (result: CommandReply) => void) => void;
}
