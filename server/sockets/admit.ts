import { parseCookie } from 'cookie';
import * as v from 'valibot';
import { handshakeSchema } from '../../shared/protocol/commands.ts';
import type { ErrorCode } from '../../shared/protocol/errors.ts';
import type { ClassId } from '../../shared/protocol/ids.ts';
import type { LiveSocket, SocketTools } from './attach.ts';
import { attachBoard } from './board.ts';
import { attachDesk } from './desk.ts';
import { attachStand } from './stand.ts';

/** Finds out which screen this is, and readies it to start; or why it may not. */
export async function admit(socket: LiveSocket, tools: SocketTools): Promise<ErrorCode | undefined> {
  const handshake = v.safeParse(handshakeSchema, socket.handshake.auth);
  if (!handshake.success) return 'malformed';
  const who = handshake.output;
  socket.data.role = who.role;
  const address = tools.addressOf(socket.request);
  if (who.role === 'desk') {
    const teacherId = await tools.sessionTeacher(parseCookie(socket.handshake.headers.cookie ?? ''));
    if (!teacherId) return 'not-signed-in';
    return attachDesk(socket, who.classId as ClassId, teacherId, tools);
  }
  const guesses = await tools.guesses.get(address);
  if (guesses && guesses.remainingPoints <= 0) return 'too-many-tries';
  const refusal =
    who.role === 'board'
      ? await attachBoard(socket, who.code, tools)
      : await attachStand(socket, who.token, tools);
  if (refusal === 'unknown-code' || refusal === 'seat-unknown')
    await tools.guesses.consume(address).catch(() => undefined);
  return refusal;
}
