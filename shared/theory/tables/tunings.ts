/** Kinds of instrument that share a way of playing. */
export type InstrumentFamily = 'guitar' | 'bass' | 'ukulele' | 'mandolin' | 'other';

/** An instrument as it leaves the shop; instrument facts, not logic (common practice, frets and millimetres too). */
export interface TuningRow {
  readonly name: string;
  readonly family: InstrumentFamily;
  /** Open strings from string 1 on, in the storage form of pitches. */
  readonly strings: string;
  readonly frets: number;
  readonly scaleLengthMm: number;
  readonly marks: readonly number[];
  readonly doubleMarks: readonly number[];
  /** The tuning that a player of this family has in the hands; absent where it is this one. */
  readonly home?: 'guitar' | 'ukulele';
}

/** A steel-string guitar's neck; electric ones and basses have other frets and lengths. */
const neck = {
  family: 'guitar',
  frets: 19,
  scaleLengthMm: 648,
  marks: [3, 5, 7, 9, 12, 15, 17, 19, 21, 24],
  doubleMarks: [12, 24],
} as const;
const retuned = { ...neck, home: 'guitar' } as const;
const bass = { ...neck, family: 'bass', frets: 20, scaleLengthMm: 864 } as const;
const small = { marks: [5, 7, 10, 12, 15, 17, 19], doubleMarks: [12] } as const;
const ukulele = { ...small, family: 'ukulele', frets: 15, scaleLengthMm: 380 } as const;

export const tuningTable = {
  guitar: { ...neck, name: 'Guitar', strings: 'E4 B3 G3 D3 A2 E2' },
  'guitar-half-down': {
    ...retuned,
    name: 'Guitar, a semitone down',
    strings: 'Eb4 Bb3 Gb3 Db3 Ab2 Eb2',
  },
  'guitar-whole-down': { ...retuned, name: 'Guitar, a tone down', strings: 'D4 A3 F3 C3 G2 D2' },
  'guitar-drop-d': { ...retuned, name: 'Guitar, drop D', strings: 'E4 B3 G3 D3 A2 D2' },
  'guitar-dadgad': { ...retuned, name: 'Guitar, DADGAD', strings: 'D4 A3 G3 D3 A2 D2' },
  'guitar-open-g': { ...retuned, name: 'Guitar, open G', strings: 'D4 B3 G3 D3 G2 D2' },
  'guitar-open-d': { ...retuned, name: 'Guitar, open D', strings: 'D4 A3 F#3 D3 A2 D2' },
  'guitar-open-e': { ...retuned, name: 'Guitar, open E', strings: 'E4 B3 G#3 E3 B2 E2' },
  'guitar-open-a': { ...retuned, name: 'Guitar, open A', strings: 'E4 C#4 A3 E3 A2 E2' },
  'guitar-fourths': { ...retuned, name: 'Guitar, all fourths', strings: 'F4 C4 G3 D3 A2 E2' },
  'guitar-baritone': {
    ...retuned,
    name: 'Baritone guitar',
    strings: 'B3 F#3 D3 A2 E2 B1',
    frets: 22,
    scaleLengthMm: 686,
  },
  'guitar-7': { ...neck, name: 'Guitar, 7 strings', strings: 'E4 B3 G3 D3 A2 E2 B1', frets: 24 },
  'guitar-8': {
    ...neck,
    name: 'Guitar, 8 strings',
    strings: 'E4 B3 G3 D3 A2 E2 B1 F#1',
    frets: 24,
    scaleLengthMm: 686,
  },
  'bass-4': { ...bass, name: 'Bass', strings: 'G2 D2 A1 E1' },
  'bass-5': { ...bass, name: 'Bass, 5 strings', strings: 'G2 D2 A1 E1 B0' },
  ukulele: { ...ukulele, name: 'Ukulele', strings: 'A4 E4 C4 G4' },
  'ukulele-low-g': { ...ukulele, name: 'Ukulele, low G', strings: 'A4 E4 C4 G3', home: 'ukulele' },
  'ukulele-baritone': {
    ...ukulele,
    name: 'Baritone ukulele',
    strings: 'E4 B3 G3 D3',
    frets: 19,
    scaleLengthMm: 483,
    home: 'ukulele',
  },
  'tenor-guitar': { ...neck, name: 'Tenor guitar', strings: 'A4 D4 G3 C3', scaleLengthMm: 584 },
  mandolin: {
    ...small,
    name: 'Mandolin',
    family: 'mandolin',
    strings: 'E5 A4 D4 G3',
    frets: 20,
    scaleLengthMm: 352,
  },
} as const satisfies Readonly<Record<string, TuningRow>>;

export type TuningId = keyof typeof tuningTable;
