import type { ScaleId } from './scales.ts';

/** A scale as a teacher says it behind its root: "D dorian mode". */
export const scaleNames: Readonly<Record<ScaleId, string>> = {
  major: 'major scale',
  'natural-minor': 'natural minor scale',
  'major-pentatonic': 'major pentatonic',
  'minor-pentatonic': 'minor pentatonic',
  dorian: 'dorian mode',
  phrygian: 'phrygian mode',
  lydian: 'lydian mode',
  mixolydian: 'mixolydian mode',
  locrian: 'locrian mode',
  'harmonic-minor': 'harmonic minor scale',
  'melodic-minor': 'melodic minor scale',
  blues: 'blues scale',
  'major-blues': 'major blues scale',
  'whole-tone': 'whole-tone scale',
  'diminished-whole-half': 'diminished scale, whole step first',
  'diminished-half-whole': 'diminished scale, half step first',
  altered: 'altered scale',
  'lydian-dominant': 'lydian dominant scale',
  'phrygian-dominant': 'phrygian dominant scale',
  'harmonic-major': 'harmonic major scale',
};
