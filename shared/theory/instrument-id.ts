import { failure, success, type Result } from '../lib/result.ts';
import type { Instrument, InstrumentId } from './fretboard.ts';
import { makeInstrument, type InstrumentSpec } from './instrument.ts';
import { formatPitch, midiOf, parsePitch, type Pitch } from './pitch.ts';
import { tuningTable, type TuningId, type TuningRow } from './tables/tunings.ts';

/** What a custom tuning is laid on where the id doesn't say otherwise. */
const customNeck = { frets: 19, scaleLengthMm: 648 } as const;
const custom = 'custom:';
const longestId = 120;
const fewestStrings = 3;
const mostStrings = 10;
const lowestMidi = 12;
const highestMidi = 108;
const fewestFrets = 5;
const mostFrets = 36;
const shortestMm = 200;
const longestMm = 1000;

/**
 * Reads an instrument's id: a tuning of the table, or `custom:` and its strings from string 1 on, then the options
 * that differ from the default, in this order: `guitar-drop-d+capo=2`, `custom:D4-B3-G3-D3-G4+frets=22+scale=670`.
 * The failure is a sentence for a person.
 */
export function parseInstrument(text: InstrumentId): Result<Instrument, string> {
  const spec = parseSpec(text);
  return spec.ok ? success(makeInstrument(text, spec.value)) : spec;
}

/** The id of what is wanted: `formatInstrument({ tuning: 'ukulele', capo: 2, frets: 15, scaleLengthMm: 380 })`. */
export function formatInstrument({ tuning, capo, frets, scaleLengthMm }: InstrumentSpec): InstrumentId {
  const usual = usualNeck(tuning);
  return [
    typeof tuning === 'string' ? tuning : custom + tuning.map(formatPitch).join('-'),
    capo === 0 ? '' : `+capo=${String(capo)}`,
    frets === usual.frets ? '' : `+frets=${String(frets)}`,
    scaleLengthMm === usual.scaleLengthMm ? '' : `+scale=${String(scaleLengthMm)}`,
  ].join('');
}

/** What an instrument was made from; frets and millimetres from the nut. `formatInstrument` writes it again. */
export function specOf(instrument: Instrument): InstrumentSpec {
  return instrument.spec;
}

function usualNeck(tuning: InstrumentSpec['tuning']): {
  readonly frets: number;
  readonly scaleLengthMm: number;
} {
  return typeof tuning === 'string' ? tuningTable[tuning] : customNeck;
}

function isTuning(text: string): text is TuningId {
  return Object.hasOwn(tuningTable, text);
}

function parseSpec(text: string): Result<InstrumentSpec, string> {
  if (text.length > longestId)
    return failure(`An instrument is written in at most ${String(longestId)} signs.`);
  const [head = '', ...options] = text.split('+');
  const tuning = parseTuning(head);
  if (!tuning.ok) return tuning;
  const usual = usualNeck(tuning.value);
  const read = { capo: 0, frets: usual.frets, scale: usual.scaleLengthMm };
  for (const option of options) {
    const [, name, number] = /^(capo|frets|scale)=(\d{1,4}(?:\.\d)?)$/.exec(option) ?? [];
    if (number === undefined) return failure(`“${option}” is no option: capo, frets or scale, and a number.`);
    read[name as keyof typeof read] = Number(number);
  }
  const { capo, frets, scale } = read;
  if (!Number.isInteger(frets) || frets < fewestFrets || frets > mostFrets)
    return failure(`A neck has ${String(fewestFrets)} to ${String(mostFrets)} frets.`);
  if (!Number.isInteger(capo) || capo > frets - fewestFrets)
    return failure(`A capo leaves at least ${String(fewestFrets)} frets to play.`);
  if (scale < shortestMm || scale > longestMm)
    return failure(`Strings sound over ${String(shortestMm)} to ${String(longestMm)} millimetres.`);
  const spec = { tuning: tuning.value, capo, frets, scaleLengthMm: scale };
  // One instrument has one id: order, repetition, defaults and leading noughts show here.
  const written = formatInstrument(spec);
  return written === text ? success(spec) : failure(`This instrument is written ${written}.`);
}

function parseTuning(text: string): Result<InstrumentSpec['tuning'], string> {
  if (isTuning(text)) return success(text);
  if (!text.startsWith(custom)) return failure(`“${text}” is no tuning known here.`);
  const names = text.slice(custom.length).split('-');
  if (names.length < fewestStrings || names.length > mostStrings)
    return failure(`An instrument has ${String(fewestStrings)} to ${String(mostStrings)} strings.`);
  const strings: Pitch[] = [];
  for (const name of names) {
    const pitch = parsePitch(name);
    // No string is told by a double accidental, and one raised by a capo might need a triple one.
    if (!pitch || Math.abs(pitch.alteration) > 1)
      return failure(`“${name}” is no open string: write a letter, # or b, and the octave, as in Eb4.`);
    const midi = midiOf(pitch);
    if (midi < lowestMidi || midi > highestMidi)
      return failure(`${name} is out of hearing: C0 to C8 are read.`);
    strings.push(pitch);
  }
  return success(strings);
}

/** Every tuning of the table, in its order: what an instrument can be chosen from. */
export const tuningIds: readonly TuningId[] = Object.keys(tuningTable).filter(isTuning);

/** The row of a tuning: `tuningRow('mandolin').name` is "Mandolin". */
export function tuningRow(id: TuningId): TuningRow {
  return tuningTable[id];
}
