import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { known } from '../../../shared/lib/assert.ts';
import { chordSounds } from '../../../shared/theory/chord-rule.ts';
import { chordDegrees, degreeAt } from '../../../shared/theory/chord.ts';
import type { ChordWish } from '../../../shared/theory/chord-tones.ts';
import { fingeringProblem, fingeringsOf } from '../../../shared/theory/fingering.ts';
import {
  fretDistance,
  instrumentById,
  midiAt,
  pitchClassAt,
  place,
  standardGuitar,
  type Instrument,
  type Place,
  type StringNumber,
} from '../../../shared/theory/fretboard.ts';
import { hands } from '../../../shared/theory/hand.ts';
import { tuningIds } from '../../../shared/theory/instrument-id.ts';
import { makeInstrument } from '../../../shared/theory/instrument.ts';
import { parseNoteName, pitchClassOf, type NoteName } from '../../../shared/theory/pitch.ts';
import { voicingsOf, type Voicing, type VoicingOptions } from '../../../shared/theory/playable.ts';
import { chordTable, type ChordQuality } from '../../../shared/theory/tables/chords.ts';
import { specs } from './any-instrument.ts';

const note = (text: string): NoteName => known(parseNoteName(text), text);
const qualities = Object.keys(chordTable) as readonly ChordQuality[];
const roots = 'C C# D Eb E F F# G Ab A Bb B'.split(' ').map(note);

/** As a chart writes it, from the largest string number on. */
function chart({ notes }: Voicing, strings = 6): string {
  return Array.from({ length: strings }, (_, at) => {
    const own = notes.find((one) => one.place.string === strings - at);
    return own ? String(own.place.fret) : 'x';
  }).join(' ');
}

/** What every voicing has to be: one note a string, the chord by rule CHORD, and fingers that can hold it. */
function expectSound(
  instrument: Instrument,
  chord: ChordWish,
  { notes, fingering }: Voicing,
  hand = hands.usual,
) {
  const places = notes.map((one) => one.place);
  expect(new Set(places.map((spot) => spot.string)).size).toBe(notes.length);
  expect(fingeringProblem(instrument, notes, hand)).toBeUndefined();
  expect(fingering.fingers).toEqual(notes.map(({ place: spot, finger }) => ({ place: spot, finger })));
  const [lowest] = [...places].sort((a, b) => midiAt(instrument, a) - midiAt(instrument, b));
  const lowestClass = pitchClassAt(instrument, known(lowest, 'a note'));
  const bassClass = chord.bass && pitchClassOf(chord.bass);
  if (bassClass !== undefined) expect(lowestClass).toBe(bassClass);
  const degreeIn = (spot: Place) =>
    degreeAt(chord.root, chordDegrees(chord.quality), pitchClassAt(instrument, spot));
  const foreign = places.filter((spot) => degreeIn(spot) === undefined);
  expect(foreign.every((spot) => pitchClassAt(instrument, spot) === bassClass)).toBe(true);
  const bass = degreeAt(chord.root, chordDegrees(chord.quality), lowestClass);
  const degrees = places.flatMap((spot) => degreeIn(spot) ?? []);
  expect(chordSounds(chord.quality, degrees, { bass }).ok).toBe(true);
  for (const one of notes) if (!foreign.includes(one.place)) expect(one.degree).toBe(degreeIn(one.place));
}

describe('HAND-4: chords that everybody learns', () => {
  // Source: common practice.
  const usual =
    `C major x32010;G major 320003;D major xx0232;A major x02220;E major 022100;F major 133211;A minor x02210;
    E minor 022000;D minor xx0231;B minor x24432;B 7 x21202;G 7 320001;C 7 x32310;E 7 020100;A 7 x02020;D 7 xx0212;
    C maj7 x32000;F# minor 244222;Bb major x13331;C# minor x46654;G minor 355333;C minor x35543;A m7 x02010;E m7 022030;
    D m7 xx0211;F maj7 xx3210;E sus4 022200;D sus2 xx0230;A sus4 x02230`
      .split(';')
      .map((row) => row.trim().split(' '));
  const places = usual.map(([root = '', quality = '', frets = '']) => {
    const voicings = voicingsOf(standardGuitar, { root: note(root), quality: quality as ChordQuality });
    return voicings.findIndex((one) => chart(one) === [...frets].join(' '));
  });

  test('19 of 29 come first, all among the first twelve', () => {
    console.log(`places of the chords that everybody learns: ${places.join(' ')}`);
    expect(places.filter((at) => at === 0).length).toBeGreaterThanOrEqual(19);
    expect(places).not.toContain(-1);
  });
});

test('HAND-4: every voicing of every chord is the chord and can be held', () => {
  for (const quality of qualities)
    for (const root of roots) {
      const voicings = voicingsOf(standardGuitar, { root, quality });
      expect([quality, voicings.length]).toEqual([quality, 12]);
      for (const [index, one] of voicings.entries()) {
        expectSound(standardGuitar, { root, quality }, one);
        expect(one.cost).toBeGreaterThanOrEqual(voicings[index - 1]?.cost ?? 0);
      }
      expect(new Set(voicings.map((one) => chart(one))).size).toBe(12);
    }
});

/** Every choice of a fret or silence for each string, without any cleverness. */
function everyChoice(
  instrument: Instrument,
  string = instrument.openStrings.length,
): readonly (readonly Place[])[] {
  if (string === 0) return [[]];
  const rest = everyChoice(instrument, string - 1);
  const own = Array.from({ length: instrument.fretCount + 1 }, (_, fret) => place(string, fret));
  return [...rest, ...own.flatMap((spot) => rest.map((others) => [spot, ...others]))];
}

describe('HAND-4: the search leaves nothing better out', () => {
  test.each([
    ['custom:E4-B3-G3+frets=7', 'major'],
    ['custom:E4-B3-G3+frets=7', 'm7b5'],
    ['custom:G4-C4-E4-A3+frets=5', '7'],
    ['custom:A4-E4-C4-G3+frets=6', 'maj9'],
    ['custom:A4-E4-C4-G3+frets=6', 'minor'],
  ] as const)('%s, %s', (id, quality) => {
    const instrument = known(instrumentById(id), id);
    const choices = everyChoice(instrument);
    const isReentrant = id.includes('C4-E4');
    for (const root of roots) {
      const degrees = chordDegrees(quality);
      const costs = choices.flatMap((places) => {
        const sounding = places.map((spot) => degreeAt(root, degrees, pitchClassAt(instrument, spot)));
        const own = sounding.filter((one) => one !== undefined);
        if (places.length === 0 || own.length < places.length) return [];
        const [lowest] = [...places].sort((a, b) => midiAt(instrument, a) - midiAt(instrument, b));
        const bass = lowest && degreeAt(root, degrees, pitchClassAt(instrument, lowest));
        const sound = chordSounds(quality, own, { bass });
        const fingerings = fingeringsOf(instrument, places);
        // What we make up keeps its root and third, and the fifth of a triad.
        if (!sound.ok || sound.omitted.some((one) => one !== '5') || !fingerings.ok) return [];
        const strings = places.map((spot) => spot.string);
        const inside = Math.max(...strings) - Math.min(...strings) + 1 - strings.length;
        const outside = instrument.openStrings.length - strings.length - inside;
        const fretted = places.filter((spot) => spot.fret > 0).map((spot) => spot.fret);
        const low = fretted.length === 0 ? 0 : Math.min(...fretted);
        const cost = known(fingerings.value[0], 'fingering').cost;
        const music =
          80 * inside + 35 * outside + 30 * sound.omitted.length + (isReentrant || bass === '1' ? 0 : 80);
        return [cost + music + 0.5 * fretDistance(instrument.scaleLengthMm, low)];
      });
      const best = costs.sort((a, b) => a - b).slice(0, 5);
      const found = voicingsOf(instrument, { root, quality }, { most: 5 }).map(({ cost }) => cost);
      expect(found).toHaveLength(best.length);
      for (const [index, cost] of found.entries()) expect(cost).toBeCloseTo(best[index] ?? NaN, 6);
    }
  });
});

describe('HAND-4: what is asked for holds', () => {
  const em: ChordWish = { root: note('E'), quality: 'minor' };

  test('the root at a place', () => {
    const voicings = voicingsOf(standardGuitar, em, { rootPlace: place(2, 5) });
    expect(voicings).toHaveLength(12);
    for (const { notes } of voicings)
      expect(notes.find((one) => one.place.string === 2)).toMatchObject({ place: place(2, 5), degree: '1' });
    expect(voicingsOf(standardGuitar, em, { rootPlace: place(2, 4) })).toEqual([]);
    expect(voicingsOf(standardGuitar, em, { rootPlace: place(2, 29) })).toEqual([]);
    expect(voicingsOf(standardGuitar, em, { rootPlace: place(7, 0) })).toEqual([]);
  });

  test('exactly these strings', () => {
    const strings = [3, 2, 1] as StringNumber[];
    // Source: computed from the tuning; root on string 2 at fret 5, strings 3-2-1 minor: f−1, f, f−2.
    const [first] = voicingsOf(standardGuitar, em, { strings, rootPlace: place(2, 5) });
    expect(first && chart(first)).toBe('x x x 4 5 3');
    for (const { notes } of voicingsOf(standardGuitar, em, { strings }))
      expect(notes.map((one) => one.place.string)).toEqual(strings);
    expect(voicingsOf(standardGuitar, em, { strings: [2, 1] as StringNumber[] })).toEqual([]);
    expect(voicingsOf(standardGuitar, em, { strings, rootPlace: place(6, 0) })).toEqual([]);
  });

  test('a bass lies lowest, its degree by its letter where it is no chord tone', () => {
    const slash = { root: note('D'), quality: 'major', bass: note('C') } as const;
    const [first] = voicingsOf(standardGuitar, slash);
    expect(first?.notes[0]?.degree).toBe('b7');
    for (const bass of ['E', 'G', 'C', 'F#', 'Bb'].map(note))
      for (const one of voicingsOf(standardGuitar, { ...em, bass }))
        expectSound(standardGuitar, { ...em, bass }, one);
  });

  test('a small hand gets what it reaches', () => {
    for (const one of voicingsOf(standardGuitar, { root: note('G'), quality: 'maj9' }, { hand: hands.small }))
      expectSound(standardGuitar, { root: note('G'), quality: 'maj9' }, one, hands.small);
  });
});

test.each(tuningIds)('HAND-4: %s has major, minor and seventh chords', (id) => {
  const instrument = known(instrumentById(id), id);
  for (const quality of ['major', 'minor', '7'] as const)
    for (const root of roots) {
      const voicings = voicingsOf(instrument, { root, quality }, { most: 3 });
      expect(voicings).toHaveLength(3);
      for (const one of voicings) expectSound(instrument, { root, quality }, one);
    }
});

test('HAND-4: any chord on any instrument, whatever is asked', () => {
  const wishes = fc.record({
    root: fc.constantFrom(...roots),
    quality: fc.constantFrom(...qualities),
    bass: fc.option(fc.constantFrom(...roots), { nil: undefined, freq: 3 }),
  });
  let found = 0;
  fc.assert(
    fc.property(specs, wishes, fc.nat(9), fc.nat(20), fc.boolean(), (spec, chord, string, fret, isFixed) => {
      const instrument = makeInstrument('custom', spec);
      const options: VoicingOptions = isFixed ? { rootPlace: place(string + 1, fret) } : {};
      for (const one of voicingsOf(instrument, chord, { ...options, most: 3 })) {
        found += 1;
        expectSound(instrument, chord, one);
      }
    }),
    { numRuns: 60 },
  );
  expect(found).toBeGreaterThan(5);
});
