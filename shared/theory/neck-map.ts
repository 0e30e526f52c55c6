import { chordDegrees, scaleDegrees } from './chord.ts';
import type { FretRange, Instrument, Place } from './fretboard.ts';
import { semitonesOf, type Degree } from './interval.ts';
import { pitchClass, type NoteName } from './pitch.ts';
import { placesOn } from './position.ts';
import type { ChordQuality } from './tables/chords.ts';
import type { ScaleId } from './tables/scales.ts';

/** From the innermost out. */
export type Layer = 'chord' | 'pentatonic' | 'scale';

export interface MapNote {
  readonly place: Place;
  readonly degree: Degree;
  readonly layer: Layer;
}

/** All over one root. */
export interface Layers {
  readonly chord: ChordQuality;
  readonly pentatonic: ScaleId;
  readonly scale: ScaleId;
}

/**
 * Chord inside pentatonic inside scale, on every place in the range: over A, with `m7`, `minor-pentatonic` and `dorian`,
 * fret 5 of string 6 is chord, fret 5 of string 5 pentatonic, fret 7 of string 6 scale. A tone that several have is of
 * the innermost and named by the scale; one that the scale lacks is there all the same.
 */
export function neckMap(
  instrument: Instrument,
  root: NoteName,
  { chord, pentatonic, scale }: Layers,
  range: FretRange,
): readonly MapNote[] {
  const [ofScale, ofChord, ofPentatonic] = [
    scaleDegrees(scale),
    chordDegrees(chord),
    scaleDegrees(pentatonic),
  ];
  const layerOf = (degree: Degree): Layer => {
    if (sounds(ofChord, degree)) return 'chord';
    return sounds(ofPentatonic, degree) ? 'pentatonic' : 'scale';
  };
  return placesOn(instrument, root, [...ofScale, ...ofChord, ...ofPentatonic], range).map(
    ({ place, degree }) => ({ place, degree, layer: layerOf(degree) }),
  );
}

/** Whether one of the degrees sounds the same as this one. */
function sounds(degrees: readonly Degree[], degree: Degree): boolean {
  const above = pitchClass(semitonesOf(degree));
  return degrees.some((own) => pitchClass(semitonesOf(own)) === above);
}
