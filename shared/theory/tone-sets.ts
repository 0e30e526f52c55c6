import { chordDegrees, scaleDegrees } from './chord.ts';
import type { Degree } from './interval.ts';
import { chordTable, type ChordQuality } from './tables/chords.ts';
import { scaleTable, type ScaleId } from './tables/scales.ts';

/** What can be laid out over the neck: a scale, or the tones of a chord one after the other: `'arpeggio-m7'`. */
export type ToneSetId = ScaleId | `arpeggio-${ChordQuality}`;

const arpeggio = 'arpeggio-';

/** Whether the text names a tone set: `isToneSetId('arpeggio-m7')` is true, `isToneSetId('arpeggio-dorian')` is not. */
export function isToneSetId(text: string): text is ToneSetId {
  return text.startsWith(arpeggio)
    ? Object.hasOwn(chordTable, text.slice(arpeggio.length))
    : Object.hasOwn(scaleTable, text);
}

/** The degrees of a tone set: `toneDegrees('arpeggio-m7')` is 1, ♭3, 5, ♭7. */
export function toneDegrees(id: ToneSetId): readonly Degree[] {
  return isArpeggio(id) ? chordDegrees(arpeggioChord(id)) : scaleDegrees(id);
}

/** The chord of an arpeggio: `arpeggioChord('arpeggio-m7')` is `m7`. */
export function arpeggioChord(id: `arpeggio-${ChordQuality}`): ChordQuality {
  return id.slice(arpeggio.length) as ChordQuality;
}

/** Whether the tone set is an arpeggio. */
export function isArpeggio(id: ToneSetId): id is `arpeggio-${ChordQuality}` {
  return id.startsWith(arpeggio);
}
