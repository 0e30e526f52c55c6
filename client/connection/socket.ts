import { io } from 'socket.io-client';
import type { Handshake } from '../../shared/protocol/commands.ts';
import { ClassConnection, type ClassSocket } from './class-connection.ts';
import { avoidCutWebSockets, bothTransports } from './transports.ts';

export type DeskConnection = ClassConnection<'desk:view'>;
export type BoardConnection = ClassConnection<'board:view'>;
export type StandConnection = ClassConnection<'stand:shared' | 'stand:own'>;

/** A socket that is not connected yet. A whole class that comes back at once is spread by the delays. */
function openSocket(handshake: Handshake): ClassSocket {
  const socket: ClassSocket = io({
    auth: handshake,
    autoConnect: false,
    forceNew: true,
    transports: bothTransports,
    tryAllTransports: true,
    timeout: 10_000,
    reconnectionDelay: 500,
    reconnectionDelayMax: 3000,
    randomizationFactor: 1,
  });
  avoidCutWebSockets(socket.io);
  return socket;
}

/** The Desk's line to one class; the session cookie says who it is. */
export function connectDesk(classId: string): DeskConnection {
  return new ClassConnection(openSocket({ role: 'desk', classId }), 'desk:command', ['desk:view']);
}

export function connectBoard(code: string): BoardConnection {
  return new ClassConnection(openSocket({ role: 'board', code }), 'desk:command', ['board:view']);
}

export function connectStand(token: string): StandConnection {
  return new ClassConnection(openSocket({ role: 'stand', token }), 'stand:command', [
    'stand:shared',
    'stand:own',
  ]);
}
