import { parseCookie } from 'cookie';
import { deskCommandSchema } from '../../shared/protocol/commands.ts';
import { errorReply, type ErrorCode } from '../../shared/protocol/errors.ts';
import type { CommandReply } from '../../shared/protocol/events.ts';
import type { ClassId, TeacherId, Time } from '../../shared/protocol/ids.ts';
import { handleCommand, type LiveSocket, type SocketTools } from './attach.ts';
import { refuseOthers } from './refuse-others.ts';

/** A session may also be ended by another process, which says nothing: so often it is looked up. Milliseconds. */
const askWhoEvery = 2000;

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
  const room = `desks:${running.id}`;
  const cookies = parseCookie(socket.handshake.headers.cookie ?? '');

  /** False, and the screen is cut off, once the session that opened it is over. */
  async function isSignedIn(): Promise<boolean> {
    if ((await tools.sessionTeacher(cookies)) === teacherId) return true;
    void socket.leave(room);
    // After the reply to the command that found it out.
    setImmediate(() => socket.disconnect(true));
    return false;
  }

  socket.data.start = () => {
    void socket.join(room);
    socket.emit('desk:view', running.deskSnapshot());
    const disconnect = running.connectDesk();
    const askWho = () => {
      isSignedIn().catch((error: unknown) => tools.log.error({ error }, 'session could not be read'));
    };
    socket.data.askWho = askWho;
    const asking = setInterval(askWho, askWhoEvery);
    // The session may have ended during the handshake.
    askWho();
    socket.on('disconnect', () => {
      clearInterval(asking);
      disconnect();
      tools.registry.release(running);
    });
    socket.on(
      'desk:command',
      handleCommand(socket, tools, deskCommandSchema, async (command): Promise<CommandReply> => {
        if (!(await isSignedIn())) return { ok: false, error: errorReply('not-signed-in') };
        const plan =
          command.kind === 'use-plan' && command.planId
            ? await tools.planOf(running, command.planId)
            : undefined;
        const done = await running.forDesk(command, { now: tools.now() as Time, newId: tools.newId, plan });
        return done.ok ? { ok: true } : { ok: false, error: errorReply(done.error) };
      }),
    );
    refuseOthers(socket, ['stand:command']);
  };
  return undefined;
}
