import type { Wish } from '../../../../shared/exercise/proposals.ts';
import { chordDegrees } from '../../../../shared/theory/chord.ts';
import {
  type Fret,
  type FretRange,
  type InstrumentId,
  type Place,
  type StringNumber,
} from '../../../../shared/theory/fretboard.ts';
import type { Layers } from '../../../../shared/theory/neck-map.ts';
import { octave, type NoteName } from '../../../../shared/theory/pitch.ts';
import { everyString } from '../../../../shared/theory/root-places.ts';
import type { ChordQuality } from '../../../../shared/theory/tables/chords.ts';
import type { ScaleId } from '../../../../shared/theory/tables/scales.ts';
import { arpeggioChord, isArpeggio, toneDegrees } from '../../../../shared/theory/tone-sets.ts';
import { instrumentOf, type Draft } from '../maker/draft.ts';

/** What is looked for from the root. */
export type What = 'chord' | 'scale' | 'arpeggio' | 'map' | 'progression';

export const whatWords: Readonly<Record<What, string>> = {
  chord: 'Chord',
  scale: 'Scale',
  arpeggio: 'Arpeggio',
  map: 'Map',
  progression: 'Progression',
};

/** What the fields hold; going from one What to another and back loses nothing. */
export interface AroundFields extends Layers {
  readonly what: What;
  readonly instrument: InstrumentId;
  readonly root: NoteName;
  readonly rootString: StringNumber;
  readonly fret: Fret;
  readonly quality: ChordQuality;
  readonly scaleAlone: ScaleId;
  /** The map's frets; null for the octave round the root. */
  readonly range: FretRange | null;
}

/** Starts at the root that is nearest: that of the exercise in the making. */
export function firstFields(draft: Draft): AroundFields {
  const { kind, instrument, root, rootString, strictness, rootFret, quality, scale } = draft;
  const isMinor = (kind === 'scale' ? toneDegrees(scale) : chordDegrees(quality)).includes('b3');
  const scaleAlone = isArpeggio(scale) ? (isMinor ? 'minor-pentatonic' : 'major-pentatonic') : scale;
  return withFret({
    what: kind === 'scale' ? (isArpeggio(scale) ? 'arpeggio' : 'scale') : 'chord',
    instrument,
    root,
    rootString,
    // Elsewhere the fret means nothing: the lowest root is the nearest.
    fret: strictness === 'place' ? rootFret : (0 as Fret),
    quality: isArpeggio(scale) && kind === 'scale' ? arpeggioChord(scale) : quality,
    scaleAlone,
    ...layersOver(isMinor ? 'minor' : 'major'),
    range: null,
  });
}

/** The fields with something changed: the root lies where it can, and other layers follow the map's chord. */
export function changed(fields: AroundFields, change: Partial<AroundFields>): AroundFields {
  const layers = change.chord ? layersOver(change.chord) : {};
  return withFret({ ...fields, ...layers, ...change });
}

function withFret(fields: AroundFields): AroundFields {
  const frets = rootPlaces(fields).map(({ fret }) => fret);
  const [lowest] = frets;
  return lowest === undefined || frets.includes(fields.fret) ? fields : { ...fields, fret: lowest };
}

/** Where the root lies on its string, lowest first. */
export function rootPlaces(fields: AroundFields): readonly Place[] {
  return everyString(instrumentOf(fields), fields.root)[fields.rootString - 1] ?? [];
}

/** What is proposed; null for what has its own way, map and progression. */
export function wishOf({ what, quality, scaleAlone }: AroundFields): Wish | null {
  switch (what) {
    case 'chord':
      return { kind: 'chord', quality };
    case 'scale':
      return { kind: 'scale', tones: scaleAlone };
    case 'arpeggio':
      return { kind: 'scale', tones: `arpeggio-${quality}` };
    case 'map':
    case 'progression':
      return null;
  }
}

/** Pentatonic and scale that are usually played over a chord (common practice, no source). */
export function layersOver(chord: ChordQuality): Layers {
  const degrees = chordDegrees(chord);
  if (degrees.includes('b3'))
    return {
      chord,
      pentatonic: 'minor-pentatonic',
      scale: degrees.includes('b5') ? 'locrian' : 'natural-minor',
    };
  return { chord, pentatonic: 'major-pentatonic', scale: degrees.includes('b7') ? 'mixolydian' : 'major' };
}

/** The octave round the root, the neck's end permitting. */
export function mapRange(fields: AroundFields): FretRange {
  if (fields.range) return fields.range;
  const { fretCount } = instrumentOf(fields);
  const span = Math.min(octave, fretCount);
  const low = Math.max(0, Math.min(fields.fret - octave / 2, fretCount - span));
  return { low: low as Fret, high: (low + span) as Fret };
}
