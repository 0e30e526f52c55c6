import { assertNever } from '../lib/assert.ts';
import { sevenths, triads } from './ladder-chords.ts';
import type { Candidate, Ground } from './ladder-ground.ts';
import { namedIntervals, namedNotes, notes } from './ladder-notes.ts';
import { positions, twoPositions } from './ladder-scales.ts';

/** The rungs of the ladder, easiest first (SPEC GENERATE). */
export const rungs = [
  'natural-notes',
  'all-notes',
  'name-places',
  'triads',
  'sevenths',
  'pentatonics',
  'two-positions',
  'full-scales',
] as const;
export type Rung = (typeof rungs)[number];

/** Which triads a wish is for. */
export type Third = 'both' | 'major' | 'minor';

/** Everything that a rung may ask there, each exercise once: `candidatesFor('natural-notes', ground)`. */
export function candidatesFor(rung: Rung, ground: Ground, third: Third = 'both'): readonly Candidate[] {
  switch (rung) {
    case 'natural-notes':
      return notes(ground).filter(({ exercise }) => exercise.root.alteration === 0);
    case 'all-notes':
      return notes(ground);
    case 'name-places':
      return [...namedNotes(ground), ...namedIntervals(ground)];
    case 'triads':
      return triads(ground, third === 'both' ? ['major', 'minor'] : [third]);
    case 'sevenths':
      return sevenths(ground, ['7', 'maj7', 'm7', 'm7b5']);
    case 'pentatonics':
      return positions(ground, ['major-pentatonic', 'minor-pentatonic']);
    case 'two-positions':
      return twoPositions(ground, ['major-pentatonic', 'minor-pentatonic']);
    case 'full-scales':
      return positions(ground, ['major', 'natural-minor', 'dorian', 'mixolydian', 'harmonic-minor']);
    default:
      return assertNever(rung);
  }
}
