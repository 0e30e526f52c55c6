import { instrumentById, type Instrument } from '../../shared/theory/fretboard.ts';
import { formatInstrument, tuningIds, tuningRow } from '../../shared/theory/instrument-id.ts';
import { tunedStrings, type InstrumentSpec } from '../../shared/theory/instrument.ts';
import { letters, midiOf, type Alteration, type Pitch } from '../../shared/theory/pitch.ts';
import { childOf, childrenOf, type XmlElement } from './xml.ts';

/** A guitar's, for strings tuned as no instrument here. */
const usualNeck = { frets: 19, scaleLengthMm: 648 } as const;
const mostFrets = 36;

/**
 * The neck that `attributes` tell of; the one before where they tell of none. The group's own is preferred where it is
 * tuned so, for the file says nothing of frets and millimetres.
 */
export function instrumentRead(attributes: XmlElement, before: Instrument, ofGroup: Instrument): Instrument {
  const staff = childrenOf(attributes, 'staff-details').find((one) => childOf(one, 'staff-tuning'));
  if (!staff) return before;
  const pitches = tuningOf(staff);
  if (!pitches) return before;
  const capo = wholeNumber(childOf(staff, 'capo')) ?? 0;
  if (capo === ofGroup.capo && isTunedTo(ofGroup.spec.tuning, pitches)) return ofGroup;
  const id = tuningIds.find((one) => isTunedTo(one, pitches));
  const { frets, scaleLengthMm } = id ? tuningRow(id) : usualNeck;
  return instrumentById(formatInstrument({ tuning: id ?? pitches, capo, frets, scaleLengthMm })) ?? before;
}

/** The same strings on a neck that reaches this fret, as far as necks go: a file doesn't say where its own ends. */
export function reaching(instrument: Instrument, fret: number): Instrument {
  const frets = instrument.capo + fret;
  if (fret <= instrument.fretCount || frets > mostFrets) return instrument;
  return instrumentById(formatInstrument({ ...instrument.spec, frets })) ?? instrument;
}

function isTunedTo(tuning: InstrumentSpec['tuning'], pitches: readonly Pitch[]): boolean {
  const own = tunedStrings(tuning);
  return own.length === pitches.length && own.every((string, at) => midiOf(string) === soundOf(pitches[at]));
}

function soundOf(pitch: Pitch | undefined): number | undefined {
  return pitch && midiOf(pitch);
}

/** The open strings from string 1 on; the lines of a staff are counted from the bottom up. */
function tuningOf(staff: XmlElement): readonly Pitch[] | undefined {
  const pitches = childrenOf(staff, 'staff-tuning')
    .map((tuning) => ({ line: Number(tuning.attributes['line']), pitch: pitchOf(tuning) }))
    .sort((a, b) => b.line - a.line)
    .map(({ pitch }) => pitch);
  return pitches.every((pitch) => pitch !== undefined) ? pitches : undefined;
}

function pitchOf(tuning: XmlElement): Pitch | undefined {
  const step = childOf(tuning, 'tuning-step')?.text.trim();
  const letter = letters.find((one) => one === step);
  const alteration = wholeNumber(childOf(tuning, 'tuning-alter')) ?? 0;
  const octave = wholeNumber(childOf(tuning, 'tuning-octave'));
  return letter && octave !== undefined && Math.abs(alteration) <= 2
    ? { letter, alteration: alteration as Alteration, octave }
    : undefined;
}

/** A whole number; undefined where the element is missing or says something else. */
export function wholeNumber(element: XmlElement | undefined): number | undefined {
  const text = element?.text.trim() ?? '';
  return /^-?\d{1,4}$/.test(text) ? Number(text) : undefined;
}
