import type { Degree } from '../interval.ts';

/** Degrees of each scale above its root (common practice). */
export const scaleTable = {
  major: ['1', '2', '3', '4', '5', '6', '7'],
  'natural-minor': ['1', '2', 'b3', '4', '5', 'b6', 'b7'],
  'major-pentatonic': ['1', '2', '3', '5', '6'],
  'minor-pentatonic': ['1', 'b3', '4', '5', 'b7'],
} as const satisfies Readonly<Record<string, readonly Degree[]>>;

export type ScaleId = keyof typeof scaleTable;
