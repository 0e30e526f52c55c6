import { errorReply } from '../../shared/protocol/errors.ts';
import type { ClientEvents } from '../../shared/protocol/events.ts';
import type { LiveSocket } from './attach.ts';

/** What another kind of screen may ask is refused here with a sentence, rather than left unanswered. */
export function refuseOthers(socket: LiveSocket, events: readonly (keyof ClientEvents)[]): void {
  for (const event of events) {
    socket.on(event, (_command, reply) => {
      if (typeof reply === 'function') reply({ ok: false, error: errorReply('not-allowed') });
    });
  }
}
