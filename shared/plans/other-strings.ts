import { find, form, inParts, position, stacked } from './making.ts';
import type { ReadyPlan } from './ready-plan.ts';
import type { ChordQuality } from '../theory/tables/chords.ts';

const triad = (strings: readonly number[], root: string, quality: ChordQuality, on: number, fret: number) =>
  stacked('triad', strings, root, quality, on, fret);

/** The same idea from the strings beside. */
export const otherStrings: readonly ReadyPlan[] = [
  {
    id: 'string-1-roots',
    title: 'The same idea from string 1',
    aim: 'Hang a triad, a form and a pentatonic on a root of string 1.',
    minutes: 22,
    exercises: inParts({
      'warm-up': [
        [find('F', 1), 30],
        [find('A', 1), 30],
      ],
      new: [
        [triad([3, 2, 1], 'C', 'major', 1, 8), 60],
        [triad([3, 2, 1], 'D', 'minor', 1, 10), 60],
        [form('E', 'Bb', 'major', 1, 6), 75],
        [position('minor-pentatonic', 'B', 1, 7, 1), 120],
      ],
      check: [
        [triad([3, 2, 1], 'Eb', 'major', 1, 11), 60],
        [position('major-pentatonic', 'A', 1, 5, 2), null],
      ],
    }),
    points: [
      'String 1, the thinnest, has the names of string 6: what you know there helps here.',
      'The root is now the highest tone, and the chord hangs below it.',
      'Sing the highest tone, then build what lies under it.',
    ],
  },
  {
    id: 'string-3-roots',
    title: 'The same idea from string 3',
    aim: 'Hang triads, a form and a pentatonic on a root of string 3.',
    minutes: 22,
    exercises: inParts({
      'warm-up': [
        [find('Bb', 3), 30],
        [find('D', 3), 30],
      ],
      new: [
        [triad([3, 2, 1], 'A', 'major', 3, 2), 60],
        [triad([5, 4, 3], 'E', 'major', 3, 9), 60],
        [form('A', 'C', 'minor', 3, 5), 75],
        [position('major-pentatonic', 'F', 3, 10, 2), 120],
      ],
      check: [
        [triad([3, 2, 1], 'Db', 'major', 3, 6), 60],
        [triad([5, 4, 3], 'F#', 'major', 3, 11), null],
      ],
    }),
    points: [
      'String 3, third thinnest, is {G} when it is open.',
      'The root is the lowest tone on strings 3, 2 and 1, and the highest on strings 5, 4 and 3.',
      'Towards string 2 the step is four frets, so what lies there comes one fret higher than you expect.',
    ],
  },
  {
    id: 'string-4-roots',
    title: 'The same idea from string 4',
    aim: 'Hang triads, the D form and a pentatonic on a root of string 4.',
    minutes: 22,
    exercises: inParts({
      'warm-up': [
        [find('F', 4), 30],
        [find('A', 4), 30],
      ],
      new: [
        [form('D', 'B', 'major', 4, 9), 75],
        [triad([4, 3, 2], 'F', 'major', 4, 3), 60],
        [triad([4, 3, 2], 'A', 'minor', 4, 7), 60],
        [position('minor-pentatonic', 'Bb', 4, 8, 1), 120],
      ],
      check: [
        [form('D', 'E', 'minor', 4, 2), 75],
        [position('major-pentatonic', 'C', 4, 10, 2), null],
      ],
    }),
    points: [
      'String 4 is {D} when it is open.',
      'In the D form the root is the lowest tone, and the same note sounds again on string 2.',
      'Whatever string the root is on: root first, then what lies round it.',
    ],
  },
];
