/** Where a device tries its line before there is a class: a Socket.IO namespace that knows nothing of anybody. */
export const networkCheck = '/check';

/** All that can be said there: what time is it on the server, in milliseconds since 1970? */
export interface NetworkCheckEvents {
  clock: (reply: (now: number) => void) => void;
}
