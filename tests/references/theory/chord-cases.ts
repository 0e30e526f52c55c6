import { known } from '../../../shared/lib/assert.ts';
import { chordDegrees, degreeAt } from '../../../shared/theory/chord.ts';
import { chordSounds } from '../../../shared/theory/chord-rule.ts';
import {
  instrumentById,
  midiAt,
  pitchClassAt,
  place,
  type Instrument,
  type Place,
} from '../../../shared/theory/fretboard.ts';
import type { Degree } from '../../../shared/theory/interval.ts';
import {
  parseNoteName,
  pitchClass,
  pitchClassOf,
  type NoteName,
  type PitchClass,
} from '../../../shared/theory/pitch.ts';
import type { ChordQuality } from '../../../shared/theory/tables/chords.ts';

/** The names that the files of this folder give to tunings. */
const tuningIds: Readonly<Record<string, string>> = {
  standard: 'guitar',
  dropD: 'guitar-drop-d',
  openG: 'guitar-open-g',
  openD: 'guitar-open-d',
  DADGAD: 'guitar-dadgad',
  halfDown: 'guitar-half-down',
  wholeDown: 'guitar-whole-down',
  allFourths: 'guitar-fourths',
  ukulele: 'ukulele',
  ukuleleLowG: 'ukulele-low-g',
  baritoneUke: 'ukulele-baritone',
  bass4: 'bass-4',
  seven: 'guitar-7',
  mandolin: 'mandolin',
};

export function instrumentOf(tuning: string, capo = 0): Instrument {
  const id = known(tuningIds[tuning], tuning) + (capo === 0 ? '' : `+capo=${String(capo)}`);
  return known(instrumentById(id), id);
}

/** Frets as the files write them, string N first, null where a string is not sounded. */
export function placesOf(frets: readonly (number | null)[]): readonly Place[] {
  return frets.flatMap((fret, index) => (fret === null ? [] : [place(frets.length - index, fret)]));
}

export interface AskedChord {
  readonly root: NoteName;
  readonly quality: ChordQuality;
  readonly bass: NoteName | undefined;
}

export function note(text: string): NoteName {
  return known(parseNoteName(text), text);
}

/** Degrees by semitones, where no formula says which of two names is meant. */
const bySemitones = '1 b2 2 b3 3 4 b5 5 b6 6 b7 7'.split(' ');

/** What frets make of a chord that is asked for: rule CHORD on the bare theory, without an exercise. */
export function heard(instrument: Instrument, places: readonly Place[], { root, quality, bass }: AskedChord) {
  const degreeOr = (sounding: PitchClass): Degree | undefined =>
    degreeAt(root, chordDegrees(quality), sounding);
  const above = (sounding: PitchClass) =>
    known(bySemitones[pitchClass(sounding - pitchClassOf(root))], 'twelve semitones');
  const bassClass = bass && pitchClassOf(bass);
  const classes = places.map((spot) => pitchClassAt(instrument, spot));
  const [lowest] = [...places].sort((a, b) => midiAt(instrument, a) - midiAt(instrument, b));
  const lowestClass = pitchClassAt(instrument, known(lowest, 'a note'));
  const degrees = classes.map(degreeOr).filter((degree) => degree !== undefined);
  const foreign = classes.filter((one) => degreeOr(one) === undefined && one !== bassClass);
  const sound = chordSounds(quality, degrees, { bass: degreeOr(lowestClass) });
  return {
    sound,
    foreign: bySemitones.filter((degree) => foreign.some((one) => above(one) === degree)),
    silent: chordDegrees(quality).filter((degree) => !degrees.includes(degree)),
    bassDegree: degreeOr(lowestClass) ?? above(lowestClass),
    isChord: sound.ok && foreign.length === 0 && (bass === undefined || lowestClass === bassClass),
  };
}
