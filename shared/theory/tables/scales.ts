import type { Degree } from '../interval.ts';

/**
 * Degrees of each scale above its root (common practice). Whole-tone, altered and the diminished scale that starts with
 * a half step have two spellings each; ours is the one over their dominant chord, whose 3 and ♭7 keep their names.
 */
export const scaleTable = {
  major: ['1', '2', '3', '4', '5', '6', '7'],
  'natural-minor': ['1', '2', 'b3', '4', '5', 'b6', 'b7'],
  'major-pentatonic': ['1', '2', '3', '5', '6'],
  'minor-pentatonic': ['1', 'b3', '4', '5', 'b7'],
  dorian: ['1', '2', 'b3', '4', '5', '6', 'b7'],
  phrygian: ['1', 'b2', 'b3', '4', '5', 'b6', 'b7'],
  lydian: ['1', '2', '3', '#4', '5', '6', '7'],
  mixolydian: ['1', '2', '3', '4', '5', '6', 'b7'],
  locrian: ['1', 'b2', 'b3', '4', 'b5', 'b6', 'b7'],
  'harmonic-minor': ['1', '2', 'b3', '4', '5', 'b6', '7'],
  'melodic-minor': ['1', '2', 'b3', '4', '5', '6', '7'],
  blues: ['1', 'b3', '4', 'b5', '5', 'b7'],
  'major-blues': ['1', '2', 'b3', '3', '5', '6'],
  'whole-tone': ['1', '2', '3', '#4', '#5', 'b7'],
  'diminished-whole-half': ['1', '2', 'b3', '4', 'b5', 'b6', '6', '7'],
  'diminished-half-whole': ['1', 'b2', '#2', '3', '#4', '5', '6', 'b7'],
  altered: ['1', 'b2', '#2', '3', '#4', 'b6', 'b7'],
  'lydian-dominant': ['1', '2', '3', '#4', '5', '6', 'b7'],
  'phrygian-dominant': ['1', 'b2', '3', '4', '5', 'b6', 'b7'],
  'harmonic-major': ['1', '2', '3', '4', '5', 'b6', '7'],
} as const satisfies Readonly<Record<string, readonly Degree[]>>;

export type ScaleId = keyof typeof scaleTable;
