import { answerTo, type Ask } from './asks.ts';

/** Works beside the page, so that no field ever waits for a search. */
addEventListener('message', ({ data }: MessageEvent<{ readonly id: number; readonly ask: Ask }>) => {
  postMessage({ id: data.id, kind: data.ask.kind, answer: answerTo(data.ask) });
});
