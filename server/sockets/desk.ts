import { deskCommandSchema } from '../../shared/protocol/commands.ts';
import { errorReply, type ErrorCode } from '../../shared/protocol/errors.ts';
import type { ClassId, TeacherId, Time } from '../../shared/protocol/ids.ts';
import { handleCommand, type LiveSocket, type SocketTools } from './attach.ts';

/** A teacher's screen on one of their own classes. */
export async function attachDesk(
  socket: LiveSocket,
  classId: ClassId,
  teacherId: TeacherId,
  tools: SocketTools,
): Promise<ErrorCode | undefined> {
  const running = await tools.registry.byId(classId);
  if (!running) return 'not-found';
  if (running.state.teacherId !== teacherId) return 'not-allowed';
  socket.data.start = () => {
    void socket.join(`desks:${running.id}`);
    socket.emit('desk:view', running.deskSnapshot());
    const disconnect = running.connectDesk();
    socket.on('disconnect', () => {
      disconnect();
      tools.registry.release(running);
    });
    socket.on(
      'desk:command',
      handleCommand(socket, tools, deskCommandSchema, async (command) => {
        const plan =
          command.kind === 'use-plan' && command.planId
            ? await tools.planOf(running, command.planId)
            : undefined;
        const done = await running.forDesk(command, { now: tools.now() as Time, newId: tools.newId, plan });
        return done.ok ? { ok: true } : { ok: false, error: errorReply(done.error) };
      }),
    );
  };
  return undefined;
}
