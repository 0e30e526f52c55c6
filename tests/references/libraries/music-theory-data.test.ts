import { stringInstrumentTunings } from '@musodojo/music-theory-data';
import { expect, test } from 'vitest';
import { tunedStrings } from '../../../shared/theory/instrument.ts';
import { formatName } from '../../../shared/theory/naming.ts';
import { midiOf } from '../../../shared/theory/pitch.ts';
import type { TuningId } from '../../../shared/theory/tables/tunings.ts';
import { counts } from '../counts.ts';

/** Source: @musodojo/music-theory-data 28.0.0 (npm, CC0): its key for each tuning that is in both tables. */
const keys = {
  guitar: 'guitarStandardE',
  'guitar-half-down': 'guitarHalfStepDown',
  'guitar-whole-down': 'guitarWholeStepDown',
  'guitar-drop-d': 'guitarDropD',
  'guitar-dadgad': 'guitarDadgad',
  'guitar-open-g': 'guitarOpenG',
  'guitar-open-d': 'guitarOpenD',
  'bass-4': 'bassStandardEadg',
  'bass-5': 'bassFiveStringBeadg',
  mandolin: 'mandolinStandardGdae',
  ukulele: 'ukuleleStandardGcea',
} as const satisfies Partial<Record<TuningId, keyof typeof stringInstrumentTunings>>;

test.each(Object.entries(keys) as [TuningId, (typeof keys)[keyof typeof keys]][])(
  'NECK-1: %s is tuned as there',
  (id, key) => {
    const theirs = stringInstrumentTunings[key];
    const ours = [...tunedStrings(id)].reverse();
    expect(ours.map(midiOf)).toEqual([...theirs.openMidiNotes]);
    expect(ours.map((pitch) => formatName(pitch, 'english'))).toEqual([...theirs.openNoteNames]);
  },
);

test('all are counted', () => {
  expect(Object.keys(keys)).toHaveLength(counts['music-theory-data, tunings'].cases);
});
