import type { Server as HttpServer } from 'node:http';
import type { Socket as TcpSocket } from 'node:net';
import { errorReply } from '../../shared/protocol/errors.ts';
import type { LiveServer, LiveSocket } from './attach.ts';

/** A stop waits so long for the commands under way. Milliseconds. */
const finishWithin = 2000;
/** So long a last word may take to leave, and a device to close its end. Milliseconds. */
const farewellTakes = 100;

const roomOfSeat = /^seat:/;
const roomOfClass = /^(?:stands|desks|boards):(.*)$/;

/** Notes by what a socket is counted, and lets a seat's oldest screen go where there are too many. */
export function keepSeatLimit(io: LiveServer, socket: LiveSocket, most: number, refused: () => void): void {
  const rooms = [...socket.rooms];
  const seat = rooms.find((room) => roomOfSeat.test(room));
  socket.data.countedAs = seat ?? socket.id;
  socket.data.classId = rooms.map((room) => roomOfClass.exec(room)?.[1]).find((id) => id !== undefined) ?? '';
  // Rooms keep their members in the order in which they came.
  const screens = (seat && io.sockets.adapter.rooms.get(seat)) || new Set<string>();
  for (const id of [...screens].slice(0, Math.max(0, screens.size - most))) {
    const oldest = io.sockets.sockets.get(id);
    refused();
    oldest?.emit('farewell', errorReply('open-elsewhere'));
    oldest?.disconnect(true);
  }
}

/** Ends every connection of the server: what is under way first, then a last word, then even who reads no more. */
export function endConnections(
  io: LiveServer,
  httpServer: HttpServer,
): (underWay: Promise<void>) => Promise<void> {
  const open = new Set<TcpSocket>();
  httpServer.on('connection', (socket: TcpSocket) => {
    open.add(socket);
    socket.once('close', () => open.delete(socket));
  });
  return async (underWay) => {
    await Promise.race([underWay, pause(finishWithin)]);
    io.emit('farewell', errorReply('server-stopping'));
    await pause(farewellTakes);
    const closed = io.close();
    await pause(farewellTakes);
    for (const socket of open) socket.destroy();
    await closed;
  };
}

function pause(milliseconds: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, milliseconds));
}
