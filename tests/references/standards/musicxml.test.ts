import { describe, expect, test } from 'vitest';
import { known } from '../../../shared/lib/assert.ts';
import { chordDegrees } from '../../../shared/theory/chord.ts';
import { qualityIds } from '../../../shared/theory/chord-name.ts';
import { alterationIn, degreeFrom, numberIn, type Degree } from '../../../shared/theory/interval.ts';
import { chordKinds } from '../../../shared/theory/tables/musicxml-kinds.ts';
import { counts } from '../counts.ts';

/**
 * Source: MusicXML 4.0 (W3C Community Group final report), documentation of `kind-value` in musicxml.xsd: what each kind
 * is made of, in its own order. The functional kinds, `pedal`, `Tristan`, `other` and `none` have no formula there.
 */
const kinds: Readonly<Record<string, readonly (readonly string[])[]>> = {
  major: [['3', '5']],
  minor: [['b3', '5']],
  augmented: [['3', '#5']],
  diminished: [['b3', 'b5']],
  dominant: [['major'], ['b7']],
  'major-seventh': [['major'], ['7']],
  'minor-seventh': [['minor'], ['b7']],
  'diminished-seventh': [['diminished'], ['bb7']],
  'augmented-seventh': [['augmented'], ['b7']],
  'half-diminished': [['diminished'], ['b7']],
  'major-minor': [['minor'], ['7']],
  'major-sixth': [['major'], ['6']],
  'minor-sixth': [['minor'], ['6']],
  'dominant-ninth': [['dominant'], ['9']],
  'major-ninth': [['major-seventh'], ['9']],
  'minor-ninth': [['minor-seventh'], ['9']],
  'dominant-11th': [['dominant-ninth'], ['11']],
  'major-11th': [['major-ninth'], ['11']],
  'minor-11th': [['minor-ninth'], ['11']],
  'dominant-13th': [['dominant-11th'], ['13']],
  'major-13th': [['major-11th'], ['13']],
  'minor-13th': [['minor-11th'], ['13']],
  'suspended-second': [['2', '5']],
  'suspended-fourth': [['4', '5']],
  power: [['5']],
};

function tonesOf(kind: string): readonly Degree[] {
  return known(kinds[kind], kind)
    .flat()
    .flatMap((part) => (kinds[part] === undefined ? [part] : tonesOf(part)));
}

/** Its `degree-alter`: with `add` relative to a dominant chord, whose seventh is minor. */
const addedSeventh = -1;

describe('CHORD-7: every quality is its MusicXML kind with the degrees it names', () => {
  test.each(qualityIds)('%s', (quality) => {
    const { kind, degrees } = chordKinds[quality];
    const tones = ['1', ...tonesOf(kind)];
    for (const { type, value, alter } of degrees) {
      const at = tones.findIndex((tone) => numberIn(tone) === value);
      expect([type, at >= 0]).toEqual([type, type === 'alter']);
      const from =
        type === 'alter' ? alterationIn(known(tones[at], 'a tone')) : value === 7 ? addedSeventh : 0;
      const tone = known(degreeFrom(value, from + alter), 'a degree');
      if (type === 'alter') tones[at] = tone;
      else tones.push(tone);
    }
    expect([...tones].sort()).toEqual([...chordDegrees(quality)].sort());
  });

  test('every kind that has a formula is used', () => {
    const used = new Set(qualityIds.map((quality) => chordKinds[quality].kind));
    expect([...used].sort()).toEqual(Object.keys(kinds).sort());
    expect(qualityIds).toHaveLength(counts['MusicXML 4.0, kinds'].cases);
  });
});
