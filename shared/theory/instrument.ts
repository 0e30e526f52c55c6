import { known } from '../lib/assert.ts';
import type { Instrument, InstrumentId } from './fretboard.ts';
import { degreesAbove, noteOnDegree } from './interval.ts';
import { formatName, type NoteNaming } from './naming.ts';
import { midiOf, octave, parsePitch, pitchNamed, type MidiNote, type NoteName, type Pitch } from './pitch.ts';
import { tuningTable, type TuningId, type TuningRow } from './tables/tunings.ts';

/** What an instrument is made from. Frets and millimetres are counted from the nut, whatever the capo. */
export interface InstrumentSpec {
  /** A row of the table, or the open strings from string 1 on. */
  readonly tuning: TuningId | readonly Pitch[];
  /** The fret at which a capo sits; 0 is none. */
  readonly capo: number;
  readonly frets: number;
  readonly scaleLengthMm: number;
}

/** The strings of a tuning as they sound without a capo, from string 1 on. */
export function tunedStrings(tuning: InstrumentSpec['tuning']): readonly Pitch[] {
  if (typeof tuning !== 'string') return tuning;
  return tuningTable[tuning].strings.split(' ').map((text) => known(parsePitch(text), `pitch ${text}`));
}

/** The instrument of a spec that is known to be sound; outside this room use `instrumentById`. */
export function makeInstrument(id: InstrumentId, spec: InstrumentSpec): Instrument {
  const { tuning, capo, frets, scaleLengthMm } = spec;
  const row: TuningRow | undefined = typeof tuning === 'string' ? tuningTable[tuning] : undefined;
  const strings = tunedStrings(tuning);
  const beyondCapo = (marks: readonly number[]) =>
    marks.map((mark) => mark - capo).filter((mark) => mark > 0 && mark <= frets - capo);
  const isHome = row?.home === undefined && capo === 0;
  return {
    id,
    spec,
    name: tuningName(tuning, 'english'),
    family: row?.family ?? 'other',
    openStrings: raised(strings, capo),
    fretCount: frets - capo,
    scaleLengthMm: scaleLengthMm * 2 ** (-capo / octave),
    marks: beyondCapo((row ?? tuningTable.guitar).marks),
    doubleMarks: beyondCapo((row ?? tuningTable.guitar).doubleMarks),
    capo,
    homeStrings: isHome ? undefined : (row?.home ? tunedStrings(row.home) : strings).map(midiOf),
  };
}

/**
 * "Guitar, drop D, capo 2"; a tuning that has no name by its strings, highest number first as they are usually
 * told: "5 strings, G D G B D".
 */
export function instrumentName(instrument: Instrument, naming: NoteNaming = 'english'): string {
  const capo = instrument.capo === 0 ? '' : `, capo ${String(instrument.capo)}`;
  return tuningName(instrument.spec.tuning, naming) + capo;
}

function tuningName(tuning: InstrumentSpec['tuning'], naming: NoteNaming): string {
  if (typeof tuning === 'string') return tuningTable[tuning].name;
  const names = tuning.map((string) => formatName(string, naming)).reverse();
  return `${String(names.length)} strings, ${names.join(' ')}`;
}

/**
 * The strings with a capo on. All are raised by the same written interval, the one with the fewest accidentals (of
 * equals the flat one), so that letters stay as far apart as they are tuned: E A D G B E, capo 1, is F B♭ E♭ A♭ C F.
 */
function raised(strings: readonly Pitch[], capo: number): readonly Pitch[] {
  if (capo === 0) return strings;
  const spellings = degreesAbove(capo).flatMap((degree) => {
    const names = strings.map((string) => noteOnDegree(string, degree));
    return names.every((name) => name !== undefined) ? [names] : [];
  });
  const accidentals = (names: readonly NoteName[]) =>
    names.reduce((sum, name) => sum + Math.abs(name.alteration), 0);
  const [best] = spellings.sort((a, b) => accidentals(a) - accidentals(b));
  return strings.map((string, index) => {
    const midi = (midiOf(string) + capo) as MidiNote;
    return pitchNamed(known(best?.[index], 'a spelling of the strings'), midi);
  });
}
