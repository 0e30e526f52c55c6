import fc from 'fast-check';
import { makeInstrument } from '../../../shared/theory/instrument.ts';
import { letters, type NoteName } from '../../../shared/theory/pitch.ts';
import type { Instrument } from '../../../shared/theory/fretboard.ts';
import { chordTable, type ChordQuality } from '../../../shared/theory/tables/chords.ts';
import { scaleTable, type ScaleId } from '../../../shared/theory/tables/scales.ts';
import type { ToneSetId } from '../../../shared/theory/tone-sets.ts';
import { specs } from './any-instrument.ts';

export const allScales = Object.keys(scaleTable) as readonly ScaleId[];
export const allQualities = Object.keys(chordTable) as readonly ChordQuality[];
export const allTones: readonly ToneSetId[] = [
  ...allScales,
  ...allQualities.map((quality) => `arpeggio-${quality}` as const),
];

/** One root for each pitch class; the names that a guitarist says. */
export const twelveRoots: readonly NoteName[] = [
  ...letters.map((letter): NoteName => ({ letter, alteration: 0 })),
  ...(['B', 'E', 'A', 'D'] as const).map((letter): NoteName => ({ letter, alteration: -1 })),
  { letter: 'F', alteration: 1 },
];

export const anyRoot = fc.constantFrom(...twelveRoots);
export const anyTones = fc.constantFrom(...allTones);
export const anyInstrument: fc.Arbitrary<Instrument> = specs.map((spec) => makeInstrument('any', spec));
