import { describe, expect, it } from 'vitest';
import { revealedChart, shownChart, tappedChart } from '../../../client/pages/stand/chart.ts';
import { silentIn } from '../../../shared/exercise/silent.ts';
import type { KeyNote, SlipVerdict, Verdict } from '../../../shared/exercise/verdict.ts';
import type { Exercise } from '../../../shared/exercise/exercise.ts';
import { place, standardGuitar, type Place, type StringNumber } from '../../../shared/theory/fretboard.ts';
import type { PitchClass } from '../../../shared/theory/pitch.ts';

// E minor on strings 3, 2 and 1, root on string 2 at fret 5: minor triad (f−1, f, f−2), computed in standard tuning.
const key: readonly KeyNote[] = [
  { place: place(3, 4), degree: '5', finger: 2 },
  { place: place(2, 5), degree: '1', finger: 3 },
  { place: place(1, 3), degree: 'b3', finger: 1 },
];
const given = [place(3, 5), place(2, 5), place(1, 3)];
const slip: SlipVerdict = {
  kind: 'slip',
  cause: 'short-step',
  marks: given.map((at) => ({ place: at, right: at.string !== 3 })),
  corrections: [{ from: place(3, 5), to: place(3, 4) }],
  missing: [],
};

const task = {
  instrument: 'guitar',
  root: { letter: 'E', alteration: 0 },
  rootString: 2 as StringNumber,
  strictness: 'string',
  range: null,
} as const;
const build: Exercise = {
  ...task,
  kind: 'build',
  quality: 'minor',
  voicing: { kind: 'form', form: 'triad-321', full: false },
  marksRoot: true,
  asksFinger: true,
};
const reveal = { exercise: build, notes: key };

const ofPlaces = (places: readonly Place[], verdict: Verdict | null) =>
  revealedChart(standardGuitar, reveal, { places }, verdict, 'english');

describe('a chart that is shown', () => {
  it('CHART-2: has an X on each string that the chord leaves out', () => {
    const silent = silentIn(build, key);
    expect(silent).toEqual([4, 5, 6]);
    const muted = shownChart(key, silent).notes.filter(({ look }) => look === 'muted');
    expect(muted.map(({ place: at }) => at.string)).toEqual(silent);
  });
});

describe('a chart of an answer', () => {
  it('prints what is right, strikes the slip through and rings where it is', () => {
    const chart = ofPlaces(given, slip);
    expect(
      chart.notes.map(({ place: at, look, label, root }) => [at.string, at.fret, look, label, root]),
    ).toEqual([
      [2, 5, 'filled', 'R', true],
      [1, 3, 'filled', '♭3', false],
      [3, 4, 'expected', '5', false],
      [3, 5, 'slip', undefined, undefined],
    ]);
    expect(chart.corrections).toEqual(slip.corrections);
    expect(chart.legend.map(({ words }) => words)).toEqual(['root', 'right', 'slip', 'where it is']);
  });

  it('names the tones of a right answer that lies elsewhere than the key', () => {
    const higher = key.map(({ place: at }) => place(at.string, at.fret + 12));
    const chart = ofPlaces(higher, { kind: 'right' });
    expect(chart.notes.map(({ label }) => label)).toEqual(['5', 'R', '♭3']);
    expect(chart.notes.every(({ look }) => look === 'filled')).toBe(true);
    expect(chart.legend.map(({ words }) => words)).toEqual(['root']);
  });

  it('is the key with its fingers where nothing was placed', () => {
    const chart = ofPlaces([], null);
    expect(chart.notes.map(({ place: at, finger }) => [at.string, finger])).toEqual([
      [3, 2],
      [2, 3],
      [1, 1],
    ]);
  });

  it('draws no slur where two explanations fit', () => {
    const chart = ofPlaces(given, {
      kind: 'unclear',
      causes: ['low-string-map', 'one-fret-off'],
      marks: slip.marks,
      missing: [place(3, 4)],
    });
    expect(chart.corrections).toEqual([]);
    expect(chart.notes.filter(({ look }) => look === 'expected')).toHaveLength(1);
  });
});

describe('a chart of a reveal', () => {
  const places = key.map((note) => note.place);
  const beside = (cause: SlipVerdict['cause']): SlipVerdict => ({
    kind: 'slip',
    cause,
    marks: places.map((at) => ({ place: at, right: true })),
    corrections: [],
    missing: [],
  });

  it('leads from the note that was marked as the root to the root', () => {
    const chart = (root: Place) =>
      revealedChart(standardGuitar, reveal, { places, root }, beside('wrong-root-mark'), 'english');
    expect(chart(place(1, 3)).corrections).toEqual([{ from: place(1, 3), to: place(2, 5) }]);
    expect(chart(place(2, 5)).corrections).toEqual([]);
  });

  it('keeps its fingers where the slip lies in the finger', () => {
    const chart = revealedChart(
      standardGuitar,
      reveal,
      { places, finger: 1 },
      beside('wrong-finger'),
      'english',
    );
    expect(chart.notes.map(({ finger }) => finger)).toEqual([2, 3, 1]);
  });

  it('says of each note when it came where the order went otherwise, and only there', () => {
    const scale: Exercise = {
      ...task,
      kind: 'scale',
      scale: 'minor-pentatonic',
      coverage: 'every-tone',
      order: 'up-and-down',
      rootFinger: 1,
    };
    const [first, second, third] = places as [Place, Place, Place];
    const answer = { places: [second, first, third, first, second] };
    const chart = (verdict: Verdict) =>
      revealedChart(standardGuitar, { exercise: scale, notes: key }, answer, verdict, 'english');
    const turned = chart(beside('wrong-order'));
    expect(turned.notes.map(({ place: at, visits }) => [at.string, visits])).toEqual([
      [3, [2, 4]],
      [2, [1, 5]],
      [1, [3]],
    ]);
    expect(turned.legend.map(({ words }) => words)).toContain('your order');
    expect(chart({ kind: 'right' }).notes.every(({ visits }) => visits === undefined)).toBe(true);
    expect(chart({ kind: 'right' }).legend.map(({ words }) => words)).toEqual(['root']);
  });

  it('shows of a scale no finger but the one that is asked', () => {
    const fingers = (asksFinger: boolean) =>
      revealedChart(
        standardGuitar,
        {
          exercise: {
            ...task,
            kind: 'scale',
            scale: 'minor-pentatonic',
            coverage: 'every-tone',
            rootFinger: 3,
            asksFinger,
          },
          notes: key,
        },
        { places },
        { kind: 'right' },
        'english',
      ).notes.map(({ finger }) => finger);
    expect(fingers(true)).toEqual([undefined, 3, undefined]);
    expect(fingers(false)).toEqual([undefined, undefined, undefined]);
  });

  it('shows each place once, however often it was visited', () => {
    const twice = [...places, ...places];
    const chart = revealedChart(standardGuitar, reveal, { places: twice }, { kind: 'right' }, 'english');
    expect(chart.notes.map((note) => note.place)).toEqual(places);
  });

  // Note names by naming: common practice, as in the tests of PITCH-3.
  it.each([
    ['english', 'B♭'],
    ['german', 'B'],
    ['solfege', 'si♭'],
  ] as const)('says the name of the place in the reader’s own (%s)', (naming, label) => {
    const name: Exercise = {
      ...task,
      kind: 'name',
      root: { letter: 'B', alteration: -1 },
      rootString: 3 as StringNumber,
      place: place(3, 3),
      wanted: 'note',
    };
    const chart = revealedChart(standardGuitar, { exercise: name, notes: [] }, { places: [] }, null, naming);
    expect(chart.notes).toEqual([{ place: place(3, 3), look: 'filled', label, root: false }]);
    expect(chart.corrections).toEqual([]);
  });
});

describe("a chart of the teacher's taps", () => {
  it('stays put while taps are added, and says nothing of what they sound', () => {
    const one = tappedChart(standardGuitar, [place(2, 5)]);
    const two = tappedChart(standardGuitar, [place(2, 5), place(6, 1)]);
    expect(two.window).toEqual(one.window);
    expect(two.notes.every(({ label }) => label === undefined)).toBe(true);
  });
});

describe('a chart of an answer that was heard', () => {
  const heard = (taps: readonly Place[], verdict: Verdict | null) =>
    revealedChart(
      standardGuitar,
      reveal,
      {
        places: taps,
        heard: { kind: 'chord', tones: [{ pitchClass: 4 as PitchClass, confidence: 1 }] },
        way: 'play',
      },
      verdict,
      'english',
    ).notes.map(({ place: { string, fret }, look }) => [string, fret, look]);
  const keyAlone = [
    [3, 4, 'filled'],
    [2, 5, 'filled'],
    [1, 3, 'filled'],
  ];
  const byEar: SlipVerdict = { ...slip, marks: [], corrections: [], cause: 'missing-tone' };

  it('is the key: nobody knows on which strings it sounded', () => {
    expect(heard([], byEar)).toEqual(keyAlone);
    expect(heard([], { kind: 'right' })).toEqual(keyAlone);
    expect(heard([place(2, 5)], { kind: 'right' })).toEqual(keyAlone);
  });

  it('has a tap where it lies astray, and a right one beside the key', () => {
    const astray: SlipVerdict = {
      ...byEar,
      cause: 'wrong-root-mark',
      marks: [{ place: place(3, 5), right: false }],
    };
    expect(heard([place(3, 5)], astray)).toEqual([...keyAlone, [3, 5, 'slip']]);
    // E on string 2 once more, twelve frets up.
    expect(heard([place(2, 17)], { kind: 'right' })).toEqual([...keyAlone, [2, 17, 'filled']]);
    // Of a note found by ear the tap says the string alone: F♯ is no tone of the key.
    expect(heard([place(2, 7)], { kind: 'right' })).toEqual(keyAlone);
  });
});
