import { describe, expect, it } from 'vitest';
import { lowestToTune, tunedString } from '../../../../client/components/sound/tuning.ts';
import { known } from '../../../../shared/lib/assert.ts';
import { instrumentById, standardGuitar } from '../../../../shared/theory/fretboard.ts';
import { frequencyOf, midiOf } from '../../../../shared/theory/pitch.ts';
import { tuningIds } from '../../../../shared/theory/instrument-id.ts';

// A4 = 440 Hz (ISO 16:1975); a cent is a hundredth of an equal-tempered semitone.
describe('the tuner', () => {
  it.each([
    [82.4069, 6, 0],
    [110, 5, 0],
    [146.832, 4, 0],
    [195.998, 3, 0],
    [246.942, 2, 0],
    [329.628, 1, 0],
    // 440 Hz are five semitones above string 1.
    [440, 1, 500],
    [110 * 2 ** (7 / 1200), 5, 7],
    [110 * 2 ** (-1 / 1200), 5, -1],
    [246.942 * 2 ** (-40 / 1200), 2, -40],
  ])('takes %d Hz for string %d, %d cents off', (frequency, string, cents) => {
    const tuned = tunedString(frequency, standardGuitar, null);
    expect(tuned?.string).toBe(string);
    expect(tuned?.cents).toBeCloseTo(cents, 1);
  });

  it('tells each open string of every instrument as in tune', () => {
    for (const id of tuningIds) {
      const instrument = known(instrumentById(id), id);
      for (const open of instrument.openStrings) {
        const tuned = known(tunedString(frequencyOf(midiOf(open)), instrument, null), id);
        expect(tuned.cents, id).toBeCloseTo(0, 6);
        const string = known(instrument.openStrings[tuned.string - 1], id);
        expect(midiOf(string), id).toBe(midiOf(open));
      }
    }
  });

  it('keeps to the string that was chosen, however far it is off', () => {
    const string6 = known(tunedString(110, standardGuitar, null), 'a string').string + 1;
    const chosen = string6 as Parameters<typeof tunedString>[2];
    expect(tunedString(110, standardGuitar, chosen)?.cents).toBeCloseTo(500, 6);
  });

  it('listens lower than the lowest string, which may have slipped', () => {
    expect(lowestToTune(standardGuitar)).toBeLessThan(40);
    // The lowest string of a ukulele is string 3: C4.
    expect(lowestToTune(known(instrumentById('ukulele'), 'ukulele'))).toBeLessThan(60);
  });
});
