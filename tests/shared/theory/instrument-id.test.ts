import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { instrumentById, standardGuitar } from '../../../shared/theory/fretboard.ts';
import {
  formatInstrument,
  parseInstrument,
  specOf,
  tuningIds,
  tuningRow,
} from '../../../shared/theory/instrument-id.ts';
import { instrumentName } from '../../../shared/theory/instrument.ts';
import { formatPitch } from '../../../shared/theory/pitch.ts';
import { specs } from './any-instrument.ts';

describe('NECK-4: an instrument is a short text', () => {
  test('what is written reads back, and is written the same again', () => {
    fc.assert(
      fc.property(specs, (spec) => {
        const id = formatInstrument(spec);
        const read = parseInstrument(id);
        expect(read.ok).toBe(true);
        if (!read.ok) return;
        expect(specOf(read.value)).toEqual(spec);
        expect(read.value.id).toBe(id);
        expect(formatInstrument(specOf(read.value))).toBe(id);
      }),
    );
  });

  test('the longest there is fits', () => {
    const id = `custom:${Array.from({ length: 10 }, () => 'Eb4').join('-')}+capo=31+frets=36+scale=999.5`;
    expect(parseInstrument(id).ok).toBe(true);
  });

  test.each(tuningIds)('%s alone is its row', (id) => {
    const read = parseInstrument(id);
    if (!read.ok) throw new Error(read.error);
    const row = tuningRow(id);
    expect(read.value.openStrings.map(formatPitch).join(' ')).toBe(row.strings);
    expect([read.value.fretCount, read.value.scaleLengthMm, read.value.capo]).toEqual([
      row.frets,
      row.scaleLengthMm,
      0,
    ]);
    expect([read.value.name, read.value.family]).toEqual([row.name, row.family]);
    expect(formatInstrument(specOf(read.value))).toBe(id);
  });

  test('20 tunings, the names all different', () => {
    expect(tuningIds).toHaveLength(20);
    expect(new Set(tuningIds.map((id) => tuningRow(id).name)).size).toBe(20);
  });

  test('an option says only what differs', () => {
    const usual = { tuning: 'guitar', capo: 0, frets: 19, scaleLengthMm: 648 } as const;
    expect(formatInstrument(usual)).toBe('guitar');
    expect(formatInstrument({ ...usual, capo: 2, frets: 22, scaleLengthMm: 628 })).toBe(
      'guitar+capo=2+frets=22+scale=628',
    );
  });
});

describe('NECK-4: what is no instrument is refused with a sentence', () => {
  test.each([
    ['', 'no tuning'],
    ['lute', 'no tuning'],
    ['toString', 'no tuning'],
    ['Guitar', 'no tuning'],
    ['standard', 'no tuning'],
    ['custom:E4-B3', '3 to 10 strings'],
    [`custom:${Array.from({ length: 11 }, () => 'E4').join('-')}`, '3 to 10 strings'],
    ['custom:', '3 to 10 strings'],
    ['custom:E4-B3-H3', '“H3”'],
    ['custom:E4-B3-', '“”'],
    ['custom:E4-B3-E♭3', '“E♭3”'],
    ['custom:E4-B3-Abb3', '“Abb3”'],
    ['custom:E4-B3-B-1', 'no open string'],
    ['custom:E4-B3-Cb0', 'C0 to C8'],
    ['custom:E4-B3-C#8', 'C0 to C8'],
    ['guitar+frets=4', '5 to 36 frets'],
    ['guitar+frets=37', '5 to 36 frets'],
    ['guitar+frets=20.5', '5 to 36 frets'],
    ['guitar+capo=15', 'leaves at least 5'],
    ['guitar+capo=1.5', 'leaves at least 5'],
    ['guitar+capo=-1', 'no option'],
    ['guitar+scale=199', '200 to 1000'],
    ['guitar+scale=1001', '200 to 1000'],
    ['guitar+tuning=2', 'no option'],
    ['guitar+', 'no option'],
    ['guitar+capo=', 'no option'],
    ['guitar+capo=0', 'written guitar.'],
    ['guitar+frets=19', 'written guitar.'],
    ['guitar+capo=02', 'written guitar+capo=2.'],
    ['guitar+capo=2+capo=3', 'written guitar+capo=3.'],
    ['guitar+frets=22+capo=2', 'written guitar+capo=2+frets=22.'],
    ['x'.repeat(121), 'at most 120'],
  ])('%j', (text, why) => {
    const read = parseInstrument(text);
    expect(read.ok).toBe(false);
    if (read.ok) return;
    expect(read.error).toMatch(/^[A-Z“].*\.$/);
    expect(read.error).toContain(why);
    expect(instrumentById(text)).toBeUndefined();
  });

  test('any text is read or refused, never thrown at', () => {
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          fc
            .constantFrom('guitar', 'custom:E4-B3-G3')
            .chain((head) => fc.string().map((tail) => head + tail)),
        ),
        (text) => {
          const read = parseInstrument(text);
          if (read.ok) expect(read.value.id).toBe(text);
          else expect(read.error.endsWith('.')).toBe(true);
        },
      ),
    );
  });
});

describe('NECK-4: one id, one object', () => {
  test('while it is in use', () => {
    expect(instrumentById('guitar')).toBe(standardGuitar);
    expect(instrumentById('ukulele+capo=1')).toBe(instrumentById('ukulele+capo=1'));
  });

  test('what comes from outside does not pile up: an old one is read anew, and is equal', () => {
    const first = instrumentById('bass-4+capo=1');
    for (let frets = 5; frets <= 36; frets += 1)
      for (const tuning of ['guitar', 'mandolin', 'bass-5', 'ukulele']) {
        const usual = tuningRow(tuning as 'guitar').frets;
        if (frets !== usual) instrumentById(`${tuning}+frets=${String(frets)}`);
      }
    expect(instrumentById('guitar')).toBe(standardGuitar);
    expect(instrumentById('bass-4+capo=1')).not.toBe(first);
    expect(instrumentById('bass-4+capo=1')).toEqual(first);
  });
});

describe('NECK-4: an instrument has a name', () => {
  test.each([
    ['guitar', 'Guitar'],
    ['guitar-drop-d+capo=2', 'Guitar, drop D, capo 2'],
    ['custom:D4-B3-G3-D3-G4', '5 strings, G D G B D'],
    ['custom:D4-Bb3-G3+capo=1', '3 strings, G B♭ D, capo 1'],
  ])('%s is %s', (id, name) => {
    const read = parseInstrument(id);
    expect(read.ok && instrumentName(read.value)).toBe(name);
  });

  test('in the reader’s own note names', () => {
    const read = parseInstrument('custom:D4-B3-Bb3');
    expect(read.ok && instrumentName(read.value, 'german')).toBe('3 strings, B H D');
  });
});
