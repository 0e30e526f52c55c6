import { describe, expect, test, vi } from 'vitest';
import { checkExercise } from '../../../shared/exercise/check.ts';
import { judge } from '../../../shared/exercise/judge.ts';
import { answerKey } from '../../../shared/exercise/key.ts';
import { proposalsFrom, type Proposal } from '../../../shared/exercise/proposals.ts';
import { wordingOf } from '../../../shared/exercise/wording.ts';
import { known } from '../../../shared/lib/assert.ts';
import { fingeringsOf } from '../../../shared/theory/fingering.ts';
import { holds, place, samePlace } from '../../../shared/theory/fretboard.ts';
import { midiOf } from '../../../shared/theory/pitch.ts';
import { toneDegrees } from '../../../shared/theory/tone-sets.ts';
import { note } from './making.ts';
import { arpeggioWishes, everyWish, keyPlaces, neck, necks, proposedOn, written } from './proposed.ts';

// Whole necks are walked: slow on a busy machine, never waiting for anything.
vi.setConfig({ testTimeout: 60_000 });

const words = ({ exercise }: Proposal) => Object.values(wordingOf(exercise, 'english')).join(' | ');

describe.each(necks.map((id) => [id]))('%s, every wish from every place of A♭', (id) => {
  const instrument = neck(id);
  const found = proposedOn(id, 'Ab');
  const all = found.flatMap(({ at, wish, proposals }) => proposals.map((one) => ({ at, wish, one })));

  test('there is plenty, of chords, scales and arpeggios', () => {
    expect(all.filter(({ wish }) => wish.kind === 'chord').length).toBeGreaterThan(200);
    expect(all.filter(({ wish }) => wish.kind === 'scale').length).toBeGreaterThan(200);
  });

  test('PROPOSAL-1: it can be asked, the key is right, and holds the root at the place', () => {
    for (const { at, one } of all) {
      expect(checkExercise(one.exercise)).toEqual({ ok: true, value: one.exercise });
      const places = keyPlaces(one.exercise);
      expect([one.name, judge(one.exercise, { places }).kind]).toEqual([one.name, 'right']);
      expect(holds(places, at.place)).toBe(true);
      const strictness = one.name.startsWith('Along') ? 'range' : 'place';
      expect(one.exercise).toMatchObject({ strictness, rootString: at.place.string });
    }
  });

  test('PROPOSAL-1: what sounds is the wish, counted from the open strings', () => {
    for (const { one } of all)
      for (const { place: spot, degree } of answerKey(one.exercise)) {
        const midi = midiOf(known(instrument.openStrings[spot.string - 1], 'a string')) + spot.fret;
        const semitones = { 1: 0, 2: 2, 3: 4, 4: 5, 5: 7, 6: 9, 7: 11, 9: 14, 11: 17, 13: 21 };
        const natural = semitones[Number(degree.replace(/\D/g, '')) as keyof typeof semitones];
        const bent = (degree.match(/#/g)?.length ?? 0) - (degree.match(/b/g)?.length ?? 0);
        // The root is A♭, which is G♯: 8 half steps above C.
        expect((midi - 8 - natural - bent) % 12).toBe(0);
      }
  });

  test('PROPOSAL-1: a hand can hold every chord', () => {
    for (const { wish, one } of all)
      if (wish.kind === 'chord')
        expect([one.name, fingeringsOf(instrument, keyPlaces(one.exercise)).ok]).toEqual([one.name, true]);
  });

  test('PROPOSAL-2: from the nut to the bridge, each name and each chord once', () => {
    const order = ['towards-nut', 'around', 'towards-bridge'];
    for (const { wish, proposals } of found) {
      const lies = proposals.map((one) => order.indexOf(one.lies));
      expect(lies).toEqual([...lies].sort());
      const names = proposals.map(({ name }) => name);
      expect(names.filter((name, index) => names.indexOf(name) !== index)).toEqual([]);
      const keys = proposals.map(({ exercise }) => written(keyPlaces(exercise)));
      if (wish.kind === 'chord') expect(new Set(keys).size).toBe(keys.length);
    }
  });

  test('WORD-1: no two of all that is proposed from one place have the same words', () => {
    const places = new Set(all.map(({ at }) => written([at.place])));
    expect(places.size).toBeGreaterThan(3);
    for (const here of places) {
      const told = all.filter(({ at }) => written([at.place]) === here).map(({ one }) => words(one));
      expect(told.filter((text, index) => told.indexOf(text) !== index)).toEqual([]);
    }
  });

  test('WORD-2: no words hold a fret to be found', () => {
    for (const { one } of all) {
      const frets = words(one).match(/(?<=frets? )\d+/g) ?? [];
      expect([...new Set(frets)]).toEqual([Number(frets[0]) % 12 === 0 ? frets[0] : 'no fret']);
    }
  });
});

test('PROPOSAL-2: where it lies is by the frets beside the root', () => {
  let seen = 0;
  for (const { at, wish, proposals } of proposedOn('guitar', 'D'))
    for (const { exercise, lies } of proposals) {
      if (wish.kind !== 'chord') continue;
      const others = keyPlaces(exercise).filter((spot) => !samePlace(spot, at.place));
      const mean = others.reduce((sum, spot) => sum + spot.fret, 0) / others.length - at.place.fret;
      expect(lies).toBe(mean < -0.5 ? 'towards-nut' : mean > 0.5 ? 'towards-bridge' : 'around');
      seen += 1;
    }
  expect(seen).toBeGreaterThan(1000);
});

describe('PROPOSAL-3: what is proposed', () => {
  const at = (string: number, fret: number, root: string) => ({
    instrument: neck('guitar'),
    root: note(root),
    place: place(string, fret),
  });
  const names = (from: ReturnType<typeof at>, wish: Parameters<typeof proposalsFrom>[1]) =>
    proposalsFrom(from, wish).map(({ name }) => name);

  // Source: common practice for the forms; close triads of E minor computed from the tuning.
  test('a triad in its forms and close, and what else is easy', () => {
    const e = names(at(2, 5, 'E'), { kind: 'chord', quality: 'minor' });
    expect(e).toEqual(
      expect.arrayContaining([
        'D form',
        'C form',
        'Close triad on strings 4, 3 and 2, first inversion',
        'Close triad on strings 3, 2 and 1, second inversion',
      ]),
    );
    expect(e.filter((name) => name.startsWith('Easy shape on strings')).length).toBeGreaterThan(0);
  });

  test('a seventh chord as a shell, in drop-2 and in drop-3', () => {
    const a = names(at(6, 5, 'A'), { kind: 'chord', quality: 'maj7' }).join(', ');
    for (const family of ['E form', 'Shell', 'Drop-2 voicing', 'Drop-3 voicing']) expect(a).toContain(family);
  });

  test('along a string there is every tone, or no proposal where the neck ends', () => {
    for (const id of ['guitar', 'ukulele'])
      for (const { wish, proposals } of proposedOn(id, 'C'))
        for (const { name, exercise } of proposals) {
          if (!name.startsWith('Along') || wish.kind !== 'scale') continue;
          const degrees = new Set(answerKey(exercise).map(({ degree }) => degree));
          expect([id, wish.tones, exercise.range, degrees.size]).toEqual([
            id,
            wish.tones,
            exercise.range,
            toneDegrees(wish.tones).length,
          ]);
        }
  });

  test('a scale along the root’s string alone, where a note of another string is wrong', () => {
    const along = known(
      proposalsFrom(at(2, 10, 'A'), { kind: 'scale', tones: 'minor-pentatonic' }).find(
        ({ name }) => name === 'Along string 2',
      ),
      'along',
    );
    // A C D E G on string 2 (open B), frets 0 to 12 (computed).
    const frets = [1, 3, 5, 8, 10];
    const places = frets.map((fret) => place(2, fret));
    expect(keyPlaces(along.exercise)).toEqual(places);
    expect(wordingOf(along.exercise, 'english').detail).toBe(
      'On string 2 alone, frets 0 to 12. Every note of it there.',
    );
    expect(judge(along.exercise, { places }).kind).toBe('right');
    expect(judge(along.exercise, { places: [...places, place(3, 5)] }).kind).not.toBe('right');
    expect(judge(along.exercise, { places: places.slice(1) }).kind).not.toBe('right');
  });

  test.each([
    // Its two-note patterns are its positions, note for note.
    ['minor-pentatonic', []],
    ['dorian', ['first', 'second', 'third'].map((at) => `Three notes a string, the root ${at}`)],
    ['arpeggio-m7', []],
    ['arpeggio-13', []],
  ] as const)('%s has positions, and patterns %j', (tones, patterns) => {
    const found = names(at(2, 10, 'A'), { kind: 'scale', tones });
    expect(found.filter((name) => / form position, root under finger \d$/.test(name))).toHaveLength(2);
    expect(found.filter((name) => name.includes('a string')).sort()).toEqual(patterns);
  });

  test('nothing from a place that sounds another note, or is none', () => {
    for (const [string, fret] of [
      [2, 4],
      [2, 40],
      [9, 5],
    ] as const)
      for (const wish of everyWish) expect(proposalsFrom(at(string, fret, 'E'), wish)).toEqual([]);
    expect(arpeggioWishes.length).toBeGreaterThan(3);
  });
});
