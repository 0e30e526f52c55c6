import { find, form, inParts, stacked } from './making.ts';
import type { ReadyPlan } from './ready-plan.ts';
import type { ChordQuality } from '../theory/tables/chords.ts';

/** Drop-2 on the four highest strings, its root on string 2. */
const drop2 = (root: string, quality: ChordQuality, fret: number) =>
  stacked('drop-2', [4, 3, 2, 1], root, quality, 2, fret);

/** Sevenths, and chords in a row, with every root on string 2. */
export const string2Sevenths: readonly ReadyPlan[] = [
  {
    id: 'string-2-sevenths',
    title: 'Sevenths and drop-2 from string 2',
    aim: 'Build four kinds of seventh chord round a root on string 2.',
    minutes: 22,
    exercises: inParts({
      'warm-up': [[form('triad-321', 'D', 'major', 2, 3), 45]],
      new: [
        [form('C', 'F', '7', 2, 6), 75],
        [drop2('D', 'maj7', 3), 75],
        [drop2('A', '7', 10), 75],
        [drop2('E', 'm7', 5), 75],
        [drop2('B', 'm7b5', 12), 75],
      ],
      check: [
        [drop2('Ab', 'maj7', 9), 75],
        [drop2('C#', 'm7', 2), null],
      ],
    }),
    points: [
      'Drop-2 takes a close chord of four tones and puts the second voice from above an octave down.',
      'Look for the root on string 2 first; in all of these the seventh lies on string 3.',
      'From maj7 to 7, from 7 to m7 and from m7 to m7♭5, each time one tone moves one fret down.',
    ],
  },
  {
    id: 'string-2-progressions',
    title: 'Progressions with every root on string 2',
    aim: 'Play two progressions with every root on string 2.',
    minutes: 22,
    exercises: inParts({
      'warm-up': [[find('E', 2), 30]],
      new: [
        [form('triad-321', 'E', 'major', 2, 5), 60],
        [form('triad-321', 'C#', 'minor', 2, 2), 60],
        [form('triad-321', 'A', 'major', 2, 10), 60],
        [form('triad-321', 'B', 'major', 2, 12), 60],
      ],
      check: [
        [drop2('F', 'm7', 6), 75],
        [drop2('Bb', '7', 11), 75],
        [drop2('Eb', 'maj7', 4), null],
      ],
    }),
    points: [
      'First comes I vi IV V in {E}; a small numeral is minor.',
      'Then ii V I in {Eb}, in sevenths.',
      'Say each root and see its fret before the hand leaves the chord.',
    ],
  },
];
