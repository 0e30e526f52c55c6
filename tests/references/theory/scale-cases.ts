import { place, type Place } from '../../../shared/theory/fretboard.ts';
import type { ScaleId } from '../../../shared/theory/tables/scales.ts';
import scales from './scales.json' with { type: 'json' };

/** Source of every case: scales.json (CC0, computed); see ../README.md. */
export interface ScaleCase {
  readonly id: string;
  readonly group: string;
  readonly tuning: { readonly name: string; readonly strings: readonly string[] };
  readonly system: 'pentatonic-box' | 'caged' | '3nps' | 'window';
  readonly root: string;
  readonly scale: string;
  readonly form?: string;
  readonly window?: readonly number[];
  readonly rootString: number;
  readonly rootFret: number;
  readonly rootFinger?: number;
  readonly roots?: readonly { readonly string: number; readonly fret: number }[];
  readonly lowFret: number;
  readonly highFret: number;
  readonly fretsPerString: readonly (readonly number[])[];
  readonly acceptAlso?: readonly (readonly (readonly number[])[])[];
  readonly verdict: 'correct' | 'wrong';
  readonly diagnosis?: { readonly kind: string };
}

export const scaleCases = scales.cases as unknown as readonly ScaleCase[];

const ids: Readonly<Record<string, ScaleId>> = {
  minor: 'natural-minor',
  'major pentatonic': 'major-pentatonic',
  'minor pentatonic': 'minor-pentatonic',
  'melodic minor': 'melodic-minor',
};

export function scaleIdOf(name: string): ScaleId {
  return ids[name] ?? (name as ScaleId);
}

export function onStrings(frets: ScaleCase['fretsPerString']): readonly Place[] {
  return frets.flatMap((onString, index) => onString.map((fret) => place(frets.length - index, fret)));
}
