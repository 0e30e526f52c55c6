import { describe, expect, it } from 'vitest';
import { tick } from '../../../client/listening/click.ts';
import type { ListenFor } from '../../../client/listening/events.ts';
import { hear } from '../../bench/listening/hearing.ts';
import { note, evenHand } from '../../support/sound/mix.ts';
import { Random } from '../../support/random.ts';
import { loadGuitars, sampleRate } from '../../support/sound/samples.ts';

/** Adds a tick at each of the times, so loud at most. */
function ticked(samples: Float32Array, times: readonly number[], loudness: number): Float32Array {
  const whole = samples.slice();
  const one = tick(sampleRate);
  for (const time of times) {
    const start = Math.round(time * sampleRate);
    one.forEach((value, at) => (whole[start + at] = (whole[start + at] ?? 0) + loudness * value));
  }
  return whole;
}

/** A quiet room: hiss 70 dB below full scale. */
function room(seconds: number): Float32Array {
  const random = new Random(4);
  return Float32Array.from({ length: seconds * sampleRate }, () => 0.0006 * (2 * random.next() - 1));
}

describe('a click in the microphone', () => {
  const beats = Array.from({ length: 10 }, (_, beat) => 1 + beat / 2);

  it.each([0.03, 0.3])('counts neither as a note nor as a chord, at a loudness of %d', (loudness) => {
    const sound = ticked(room(7), beats, loudness);
    for (const mode of ['line', 'chord'] as const satisfies readonly ListenFor[])
      expect(hear(sound, mode).filter(({ kind }) => kind === 'note' || kind === 'chord')).toEqual([]);
  });

  it('leaves a note that is played with it heard', async () => {
    const { acoustic } = await loadGuitars();
    for (const pitch of [48, 55, 64])
      for (const early of [-0.03, 0, 0.03]) {
        const { samples } = note(acoustic, pitch, evenHand(new Random(2)), { before: 2 });
        const heard = hear(ticked(samples, [1, 2 + early], 0.1), 'line');
        const pitches = heard.flatMap((event) => (event.kind === 'note' ? [event.pitch] : []));
        expect(pitches, `${String(pitch)} ${String(early)}`).toEqual([pitch]);
      }
  });
});
