import { describe, expect, test } from 'vitest';
import { answerTo, onEveryString, proposals, row } from '../../../client/pages/desk/around/asks.ts';
import {
  changed,
  firstFields,
  layersOver,
  mapRange,
  rootPlaces,
  wishOf,
  type AroundFields,
} from '../../../client/pages/desk/around/fields.ts';
import {
  firstRow,
  rangeChoices,
  rangeOf,
  rangeText,
  readRow,
  usualRange,
} from '../../../client/pages/desk/around/row-fields.ts';
import { settingsIn } from '../../../client/pages/desk/around/settings.ts';
import { draftOf } from '../../../client/pages/desk/maker/draft-of.ts';
import { chartNotes, checkChart } from '../../../shared/exercise/chart.ts';
import { checkExercise } from '../../../shared/exercise/check.ts';
import { place, type Fret, type StringNumber } from '../../../shared/theory/fretboard.ts';
import type { HandSize } from '../../../shared/theory/hand.ts';
import type { NoteName } from '../../../shared/theory/pitch.ts';
import { build, find, scale } from '../../support/exercises.ts';

const c: NoteName = { letter: 'C', alteration: 0 };
const five = 5 as StringNumber;
const three = 3 as Fret;

/** C on string 5, fret 3. */
const fields = (change: Partial<AroundFields> = {}): AroundFields =>
  changed(firstFields(draftOf(find('C'), null)), {
    rootString: five,
    fret: three,
    quality: 'major',
    ...change,
  });

describe('the fields', () => {
  test('start at the root that is nearest, as what it was', () => {
    expect(firstFields(draftOf(build('E', 'minor'), null))).toMatchObject({
      what: 'chord',
      rootString: 2,
      quality: 'minor',
      pentatonic: 'minor-pentatonic',
      scale: 'natural-minor',
    });
    expect(firstFields(draftOf(scale('D', 'major', 2, 3), null))).toMatchObject({
      what: 'scale',
      scaleAlone: 'major',
      fret: 3,
      chord: 'major',
    });
    expect(firstFields(draftOf(scale('D', 'arpeggio-m7', 1, 3), null))).toMatchObject({
      what: 'arpeggio',
      quality: 'm7',
    });
  });

  test('the root’s frets on its string, both octaves, lowest first; a fret that it lacks gives way', () => {
    expect(rootPlaces(fields()).map(({ fret }) => fret)).toEqual([3, 15]);
    expect(changed(fields({ fret: 15 as Fret }), { rootString: 2 as StringNumber }).fret).toBe(1);
    expect(changed(fields({ fret: 15 as Fret }), { quality: 'minor' }).fret).toBe(15);
  });

  test('an arpeggio takes the chord’s tones; map and progression have no wish', () => {
    expect(wishOf(fields({ what: 'arpeggio', quality: 'm7' }))).toEqual({
      kind: 'scale',
      tones: 'arpeggio-m7',
    });
    expect(wishOf(fields({ what: 'map' }))).toBeNull();
    expect(wishOf(fields({ what: 'progression' }))).toBeNull();
  });

  test('pentatonic and scale follow the map’s chord, until they are chosen', () => {
    expect(layersOver('7')).toEqual({ chord: '7', pentatonic: 'major-pentatonic', scale: 'mixolydian' });
    expect(layersOver('m7b5').scale).toBe('locrian');
    const dorian = changed(fields({ chord: 'm7' }), { scale: 'dorian' });
    expect(dorian).toMatchObject({ chord: 'm7', pentatonic: 'minor-pentatonic', scale: 'dorian' });
    expect(changed(dorian, { fret: 15 as Fret }).scale).toBe('dorian');
  });

  test('a map shows the octave round the root, the neck’s ends permitting', () => {
    expect(mapRange(fields())).toEqual({ low: 0, high: 12 });
    expect(mapRange(fields({ fret: 15 as Fret }))).toEqual({ low: 7, high: 19 });
    const own = { low: 2 as Fret, high: 7 as Fret };
    expect(mapRange(fields({ range: own }))).toEqual(own);
  });
});

describe('what is found', () => {
  const at = { instrument: 'guitar', root: c, place: place(5, 3) } as const;

  test('each proposal can be asked, and its notes are its chart', () => {
    const { cards, join } = proposals({
      kind: 'proposals',
      hand: 'usual',
      ...at,
      wish: { kind: 'chord', quality: 'major' },
    });
    expect(cards.map(({ name }) => name)).toContain('A form');
    expect(join).toBeNull();
    for (const { exercise, notes } of cards) {
      expect(checkExercise(exercise).ok).toBe(true);
      expect(notes).toEqual(chartNotes(exercise));
      expect(notes.some((note) => note.place.string === 5 && note.place.fret === 3)).toBe(true);
    }
  });

  test('two positions that share a root come with the walk from one to the other', () => {
    const { join } = proposals({
      kind: 'proposals',
      hand: 'usual',
      ...at,
      wish: { kind: 'scale', tones: 'minor-pentatonic' },
    });
    expect(join?.charts).toHaveLength(3);
    expect(join?.words).toMatch(/^On string \d slide from .+ to .+\.$|without a slide/);
    for (const chart of join?.charts ?? []) expect(checkChart(chart).ok).toBe(true);
  });

  test('on every string: one chart for each, the thickest first, its root on that string', () => {
    for (const wish of [
      { kind: 'chord', quality: 'minor' },
      { kind: 'scale', tones: 'major' },
    ] as const) {
      const found = onEveryString({ kind: 'every-string', instrument: 'guitar', root: c, wish });
      expect(found.map(({ rootString }) => rootString)).toEqual([6, 5, 4, 3, 2, 1]);
      for (const exercise of found) expect(checkExercise(exercise).ok).toBe(true);
    }
  });

  test('the worker answers each kind', () => {
    const wish = { kind: 'chord', quality: 'minor' } as const;
    const found = onEveryString({ kind: 'every-string', instrument: 'guitar', root: c, wish });
    expect(answerTo({ kind: 'every-string', instrument: 'guitar', root: c, wish })).toEqual(found);
  });
});

describe('a progression', () => {
  const start = firstRow(fields(), 'english');
  const read = (change: Partial<typeof start>) => readRow({ ...start, ...change }, 'english', 22);

  test('starts in the key of the root, where chords lie on its string', () => {
    expect(start).toMatchObject({ key: 'C major', rootString: 5, range: usualRange });
    expect(firstRow(fields({ quality: 'minor' }), 'english').key).toBe('C minor');
    expect(read({})).toMatchObject({ ok: true });
    expect(readRow(firstRow(fields({ quality: 'minor' }), 'german'), 'german', 22)).toMatchObject({
      ok: true,
    });
  });

  test('nonsense gets a sentence beside its own field', () => {
    expect(read({ key: 'over there' })).toMatchObject({ ok: false, error: { field: 'key' } });
    const refused = read({ chords: 'ii7 wobble I' });
    expect(refused).toMatchObject({ ok: false, error: { field: 'chords' } });
    expect(!refused.ok && refused.error.sentence).toContain('wobble');
  });

  test('every choice of frets is read as it was written', () => {
    expect(rangeText(usualRange)).toBe(rangeChoices[0]?.[0]);
    for (const [text] of rangeChoices) expect(rangeText(rangeOf(text))).toBe(text);
  });

  test('a row on string 2 has its roots there, and each chord is an exercise', () => {
    const wish = read({ chords: 'ii7 V7 I', rootString: 2 as StringNumber });
    if (!wish.ok) throw new Error('ii7 V7 I is read');
    const laid = row({ kind: 'row', instrument: 'guitar', ...wish.value });
    if (!laid.ok) throw new Error('it has forms on string 2');
    expect(laid.value.map(({ chord }) => chord.numeral)).toEqual(['ii7', 'V7', 'I']);
    for (const { exercise, root, notes } of laid.value) {
      expect(root.place.string).toBe(2);
      expect(exercise.rootString).toBe(2);
      expect(notes).toEqual(chartNotes(exercise));
    }
  });

  test('a chord that no shape plays is named in a sentence', () => {
    const wish = read({ chords: 'C/F# F', rootString: 1 as StringNumber });
    if (!wish.ok) throw new Error('C/F♯ is read');
    const laid = row({ kind: 'row', instrument: 'ukulele', ...wish.value });
    expect(laid).toEqual({ ok: false, error: 'C/F♯ has no shape here with its root on string 1.' });
  });
});

describe('what hangs on the teacher', () => {
  test('a small hand is told what stretches it', () => {
    // The C form with its root on string 5, fret 5, spans frets 2 to 5, 92 mm at 648 mm (computed).
    const at = {
      instrument: 'guitar',
      root: { letter: 'D', alteration: 0 },
      place: place(5, 5),
      wish: { kind: 'chord', quality: 'major' },
    } as const;
    const easeOfForm = (hand: HandSize) =>
      proposals({ kind: 'proposals', ...at, hand }).cards.find(({ name }) => name === 'C form')?.ease;
    expect(easeOfForm('usual')).toEqual({ ok: true, value: 'normal' });
    expect(easeOfForm('small')).toEqual({ ok: true, value: 'stretch' });
  });

  test.each([
    ['small C', { hand: 'small', firstPosition: 'C' }],
    ['large ', { hand: 'large', firstPosition: null }],
    ['huge X', { hand: 'usual', firstPosition: null }],
    [null, { hand: 'usual', firstPosition: null }],
  ])('what the device kept as %j is read as %j', (stored, settings) => {
    expect(settingsIn(stored)).toEqual(settings);
  });
});
