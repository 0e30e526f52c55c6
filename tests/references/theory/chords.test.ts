import { describe, expect, test } from 'vitest';
import { chordDegrees } from '../../../shared/theory/chord.ts';
import { formatPitch } from '../../../shared/theory/pitch.ts';
import type { ChordQuality } from '../../../shared/theory/tables/chords.ts';
import { counts } from '../counts.ts';
import { heard, instrumentOf, note, placesOf } from './chord-cases.ts';
import chords from './chords.json' with { type: 'json' };

/** Source of every case: chords.json (chords-db 0.5.1, MIT, © 2016 David Rubert; the rest CC0); see ../README.md. */
interface Case {
  readonly id: string;
  readonly group: string;
  readonly tuning: { readonly name: string; readonly strings: readonly string[] };
  readonly capo: number;
  readonly frets: readonly (number | null)[];
  readonly expectChord: { readonly root: string; readonly quality: ChordQuality; readonly bass?: string };
  readonly verdict: 'correct' | 'omits-fifth' | 'omits-other' | 'wrong';
  readonly omitted: readonly string[];
  readonly missing: readonly string[];
  readonly foreign: readonly string[];
  readonly bassDegree: string | null;
  readonly inversion: boolean;
  readonly reason?: string;
}
const cases = chords.cases as unknown as readonly Case[];
const named = (some: readonly Case[]) => some.map((one) => [`${one.id} ${one.group}`, one] as const);

function heardIn(one: Case) {
  const { root, quality, bass } = one.expectChord;
  return heard(instrumentOf(one.tuning.name, one.capo), placesOf(one.frets), {
    root: note(root),
    quality,
    bass: bass === undefined ? undefined : note(bass),
  });
}

test('every case is here and run below', () => {
  expect(cases).toHaveLength(counts['chords.json'].cases);
  expect(chords.count).toBe(cases.length);
  const byVerdict = (verdict: string) => cases.filter((one) => one.verdict === verdict).length;
  expect(['correct', 'omits-fifth', 'omits-other', 'wrong'].map(byVerdict)).toEqual([67, 6, 6, 67]);
});

test('NECK-1: the tunings of the cases are those of the table', () => {
  for (const { tuning } of cases)
    expect([...instrumentOf(tuning.name).openStrings].reverse().map(formatPitch)).toEqual(tuning.strings);
});

describe('CHORD-1…6: the frets are the chord, or they are not', () => {
  test.each(named(cases))('%s', (_name, one) => {
    const { isChord, sound, foreign, silent, bassDegree } = heardIn(one);
    expect(isChord).toBe(one.verdict !== 'wrong');
    expect(foreign).toEqual(one.foreign);
    expect(bassDegree).toBe(one.bassDegree);
    expect(silent).toEqual(one.missing);
    if (isChord && sound.ok) {
      expect(sound.omitted).toEqual(one.omitted);
      expect(one.expectChord.bass === undefined && sound.inversion).toBe(one.inversion);
    }
  });

  const lacking = cases.filter((one) => one.reason?.startsWith('missing:'));
  test.each(named(lacking))('%s: what had to sound is named', (_name, one) => {
    const { sound } = heardIn(one);
    expect(sound).toEqual({ ok: false, missing: one.reason?.slice('missing:'.length).split(',') });
  });

  test('left out by permission is what the verdict says', () => {
    for (const one of cases) {
      const { sound, isChord } = heardIn(one);
      if (!isChord || !sound.ok) continue;
      const isFifth = sound.omitted.length === 1 && sound.omitted[0] === '5';
      const verdict = sound.omitted.length === 0 ? 'correct' : isFifth ? 'omits-fifth' : 'omits-other';
      expect([one.id, verdict]).toEqual([one.id, one.verdict]);
    }
  });
});

test('CHORD-7: every quality of a case has a formula', () => {
  for (const one of cases) expect(chordDegrees(one.expectChord.quality).length).toBeGreaterThan(1);
});
