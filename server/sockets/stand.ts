import { standCommandSchema } from '../../shared/protocol/commands.ts';
import { errorReply, type ErrorCode } from '../../shared/protocol/errors.ts';
import type { SeatId, Time } from '../../shared/protocol/ids.ts';
import type { RunningClass } from '../live/running-class.ts';
import { handleCommand, type LiveSocket, type SocketTools } from './attach.ts';
import { refuseOthers } from './refuse-others.ts';

/** A student's device: known by its resume token. */
export async function attachStand(
  socket: LiveSocket,
  token: string,
  tools: SocketTools,
): Promise<ErrorCode | undefined> {
  const tokenHash = tools.hashToken(token);
  const classId = await tools.classBySeatToken(tokenHash);
  const running = classId && (await tools.registry.byId(classId));
  const seatId = running?.seatByToken(tokenHash);
  if (!running || !seatId) return 'seat-unknown';
  socket.data.start = () => startStand(socket, running, seatId, tools);
  return undefined;
}

function startStand(socket: LiveSocket, running: RunningClass, seatId: SeatId, tools: SocketTools): void {
  void socket.join([`stands:${running.id}`, `seat:${seatId}`]);
  socket.emit('stand:shared', running.sharedSnapshot());
  socket.emit('stand:own', running.ownSnapshot(seatId));
  const disconnect = running.connectStand(seatId);
  socket.on('disconnect', () => {
    disconnect();
    tools.registry.release(running);
  });
  socket.on(
    'stand:command',
    handleCommand(socket, tools, standCommandSchema, async (command) => {
      const done = await running.forStudent(seatId, command, tools.now() as Time);
      return done.ok ? { ok: true, late: done.value } : { ok: false, error: errorReply(done.error) };
    }),
  );
  refuseOthers(socket, ['desk:command']);
}
