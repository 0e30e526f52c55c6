import type { ErrorCode } from '../../shared/protocol/errors.ts';
import type { LiveSocket, SocketTools } from './attach.ts';
import { refuseOthers } from './refuse-others.ts';

/** The projector: opened by the class's code, while the class lasts. */
export async function attachBoard(
  socket: LiveSocket,
  code: string,
  tools: SocketTools,
): Promise<ErrorCode | undefined> {
  const classId = await tools.classByCode(code);
  const running = classId && (await tools.registry.byId(classId));
  if (!running) return 'unknown-code';
  const boards = `boards:${running.id}`;
  if ((socket.nsp.adapter.rooms.get(boards)?.size ?? 0) >= tools.limits.boardsPerClass) {
    tools.refused('boards');
    return 'boards-full';
  }
  // Before it starts, or many that knock at once would all find room. It hears nothing until then.
  void socket.join(boards);
  socket.data.start = () => {
    socket.emit('board:view', running.boardSnapshot());
    const disconnect = running.connectBoard();
    socket.on('disconnect', () => {
      disconnect();
      tools.registry.release(running);
    });
    refuseOthers(socket, ['desk:command', 'stand:command']);
  };
  return undefined;
}
