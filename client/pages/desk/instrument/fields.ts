import { failure, type Result, success } from '../../../../shared/lib/result.ts';
import { instrumentById, standardGuitar, type InstrumentId } from '../../../../shared/theory/fretboard.ts';
import {
  formatInstrument,
  parseInstrument,
  specOf,
  tuningIds,
  tuningRow,
} from '../../../../shared/theory/instrument-id.ts';
import { tunedStrings } from '../../../../shared/theory/instrument.ts';
import type { NoteNaming } from '../../../../shared/theory/naming.ts';
import { formatPitch, type Pitch } from '../../../../shared/theory/pitch.ts';
import type { InstrumentFamily, TuningId } from '../../../../shared/theory/tables/tunings.ts';
import { readTuning, tuningText } from './tuning-text.ts';

/** What the picker's fields hold, as typed: what can't be read stays there. */
export interface InstrumentFields {
  /** The row chosen last; a tuning of one's own starts from it. */
  readonly tuning: TuningId;
  readonly strings: string;
  readonly capo: string;
  readonly frets: string;
  readonly scale: string;
}

/** An instrument in the fields; the guitar where the id isn't known. */
export function fieldsOf(id: InstrumentId, naming: NoteNaming): InstrumentFields {
  const { tuning, capo, frets, scaleLengthMm } = specOf(instrumentById(id) ?? standardGuitar);
  const strings = tunedStrings(tuning);
  return {
    tuning: typeof tuning === 'string' ? tuning : likest(strings),
    strings: tuningText(strings, naming),
    capo: String(capo),
    frets: String(frets),
    scale: String(scaleLengthMm),
  };
}

/** The instrument that the fields say, or the sentence on what can't be read. An empty number is the usual one. */
export function instrumentIn(fields: InstrumentFields, naming: NoteNaming): Result<InstrumentId, string> {
  const like = tunedStrings(fields.tuning);
  const strings = readTuning(fields.strings, naming, like);
  if (!strings.ok) return strings;
  const row = tuningRow(fields.tuning);
  const capo = numberIn(fields.capo, 0);
  const frets = numberIn(fields.frets, row.frets);
  const scaleLengthMm = numberIn(fields.scale, row.scaleLengthMm);
  if (capo === undefined || frets === undefined || scaleLengthMm === undefined)
    return failure('Capo, frets and scale length are plain numbers.');
  const id = formatInstrument({
    tuning: same(strings.value, like) ? fields.tuning : strings.value,
    capo,
    frets,
    scaleLengthMm,
  });
  const parsed = parseInstrument(id);
  return parsed.ok ? success(id) : parsed;
}

/** Whether the strings are those of the row, or the teacher's own. */
export function isOwnTuning(fields: InstrumentFields, naming: NoteNaming): boolean {
  const like = tunedStrings(fields.tuning);
  const strings = readTuning(fields.strings, naming, like);
  return !strings.ok || !same(strings.value, like);
}

/** `650` or `643.5`; undefined where it is no number. */
function numberIn(text: string, usual: number): number | undefined {
  const typed = text.trim().replace(',', '.');
  if (typed === '') return usual;
  return /^\d{1,4}(\.\d)?$/.test(typed) ? Number(typed) : undefined;
}

function same(a: readonly Pitch[], b: readonly Pitch[]): boolean {
  return a.map(formatPitch).join() === b.map(formatPitch).join();
}

/** The row with as many strings: what a tuning of one's own goes back to. */
function likest(strings: readonly Pitch[]): TuningId {
  return tuningIds.find((id) => tunedStrings(id).length === strings.length) ?? 'guitar';
}

const familyWords: Readonly<Record<InstrumentFamily, string>> = {
  guitar: 'Guitar',
  bass: 'Bass',
  ukulele: 'Ukulele',
  mandolin: 'Mandolin',
  other: 'Others',
};

/** The tunings to choose from, by family. */
export const tuningGroups: readonly { readonly words: string; readonly tunings: readonly TuningId[] }[] = (
  Object.keys(familyWords) as InstrumentFamily[]
)
  .map((family) => ({
    words: familyWords[family],
    tunings: tuningIds.filter((id) => tuningRow(id).family === family),
  }))
  .filter(({ tunings }) => tunings.length > 0);
