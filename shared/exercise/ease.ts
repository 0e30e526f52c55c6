import { success, type Result } from '../lib/result.ts';
import { fingeringsOf } from '../theory/fingering.ts';
import { hands, type Ease, type HandSize } from '../theory/hand.ts';
import type { Exercise } from './exercise.ts';
import { answerKey } from './key.ts';
import { instrumentOf } from './roots.ts';

/**
 * How easily a hand of this size holds the chord of the answer key, or in a sentence why it can't; what is not held at
 * once, as a scale, is easy.
 */
export function easeOf(exercise: Exercise, size: HandSize): Result<Ease, string> {
  if (exercise.kind !== 'build') return success('easy');
  const places = answerKey(exercise).map(({ place }) => place);
  const found = fingeringsOf(instrumentOf(exercise), places, hands[size]);
  return found.ok ? success(found.value[0]?.ease ?? 'easy') : found;
}
