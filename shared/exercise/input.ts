import type { Exercise } from './exercise.ts';

/** How many places a string may hold at once: a chord has one note a string, other exercises may have more. */
export function placesPerString(exercise: Exercise): 'one' | 'many' {
  return exercise.kind === 'build' ? 'one' : 'many';
}
