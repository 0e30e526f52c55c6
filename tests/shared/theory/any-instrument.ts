import fc from 'fast-check';
import { tuningIds } from '../../../shared/theory/instrument-id.ts';
import type { InstrumentSpec } from '../../../shared/theory/instrument.ts';
import { letters, midiOf, type Alteration } from '../../../shared/theory/pitch.ts';

const alterations: readonly Alteration[] = [-1, 0, 1];
const pitches = fc
  .record({
    letter: fc.constantFrom(...letters),
    alteration: fc.constantFrom(...alterations),
    octave: fc.integer({ min: 0, max: 8 }),
  })
  .filter((pitch) => midiOf(pitch) >= 12 && midiOf(pitch) <= 108);

/** Any instrument that can be written. */
export const specs: fc.Arbitrary<InstrumentSpec> = fc
  .record({
    tuning: fc.oneof(fc.constantFrom(...tuningIds), fc.array(pitches, { minLength: 3, maxLength: 10 })),
    frets: fc.integer({ min: 5, max: 36 }),
    scaleLengthMm: fc.integer({ min: 2000, max: 10_000 }).map((tenths) => tenths / 10),
    capoShare: fc.integer({ min: 0, max: 35 }),
  })
  .map(({ capoShare, ...spec }) => ({ ...spec, capo: Math.min(capoShare, spec.frets - 5) }));
