import { errorReply, type ErrorReply } from '../../shared/protocol/errors.ts';
import { failure, success, type Result } from '../../shared/lib/result.ts';

/** How long joining may take, in milliseconds. */
const answerWithin = 10_000;

/** Gives code and name at the door; gets the token that this device is known by from then on. */
export async function requestSeat(code: string, name: string): Promise<Result<string, ErrorReply>> {
  try {
    const response = await fetch('/api/join', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ code, name }),
      signal: AbortSignal.timeout(answerWithin),
    });
    const body = (await response.json()) as { readonly token?: string; readonly error?: ErrorReply };
    if (typeof body.token === 'string') return success(body.token);
    return failure(body.error ?? errorReply('server-failed'));
  } catch {
    return failure(errorReply('server-failed', 'The network did not answer. Try again.'));
  }
}
