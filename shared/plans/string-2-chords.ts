import { find, form, inParts } from './making.ts';
import type { ReadyPlan } from './ready-plan.ts';

/** Chords of three tones round a root on string 2. */
export const string2Chords: readonly ReadyPlan[] = [
  {
    id: 'string-2-major-triads',
    title: 'Major triads round string 2',
    aim: 'Build a major triad on three strings from any root on string 2.',
    minutes: 18,
    exercises: inParts({
      'warm-up': [[find('C', 2), 30]],
      new: [
        [form('triad-321', 'D', 'major', 2, 3), 60],
        [form('triad-321', 'A', 'major', 2, 10), 60],
        [form('triad-432', 'F#', 'major', 2, 7), 60],
        [form('triad-432', 'Bb', 'major', 2, 11), 60],
      ],
      check: [
        [form('triad-321', 'F', 'major', 2, 6), 60],
        [form('triad-432', 'Db', 'major', 2, 2), null],
      ],
    }),
    points: [
      'First the root on string 2, then what lies round it.',
      'On strings 3, 2 and 1 the other two tones are one fret below the root.',
      'On strings 4, 3 and 2 the tone on string 4 is one fret above it, the tone on string 3 one below.',
    ],
  },
  {
    id: 'string-2-minor-triads',
    title: 'Minor triads round string 2',
    aim: 'Lower the third of a triad by one fret and hear it turn minor.',
    minutes: 20,
    exercises: inParts({
      'warm-up': [
        [find('Bb', 2), 30],
        [form('triad-321', 'E', 'major', 2, 5), 45],
      ],
      new: [
        [form('triad-321', 'F#', 'minor', 2, 7), 60],
        [form('triad-321', 'A', 'minor', 2, 10), 60],
        [form('triad-432', 'D', 'minor', 2, 3), 60],
        [form('triad-432', 'F', 'minor', 2, 6), 60],
      ],
      check: [
        [form('triad-321', 'Bb', 'minor', 2, 11), 60],
        [form('triad-432', 'C#', 'minor', 2, 2), null],
      ],
    }),
    points: [
      'Only one tone moves from major to minor: the third, one fret down.',
      'On strings 3, 2 and 1 it is the tone on string 1; on strings 4, 3 and 2 the one on string 4.',
      'Play both, one after the other, and listen before you look.',
    ],
  },
  {
    id: 'string-2-c-and-d-forms',
    title: 'C form and D form from string 2',
    aim: 'Place the movable C and D forms by their root on string 2.',
    minutes: 22,
    exercises: inParts({
      'warm-up': [[form('triad-321', 'Ab', 'major', 2, 9), 45]],
      new: [
        [form('C', 'D', 'major', 2, 3), 75],
        [form('C', 'Ab', 'major', 2, 9), 75],
        [form('D', 'F', 'major', 2, 6), 75],
        [form('C', 'E', 'minor', 2, 5), 75],
        [form('D', 'B', 'minor', 2, 12), 75],
      ],
      check: [
        [form('D', 'A', 'major', 2, 10), 75],
        [form('C', 'F#', 'minor', 2, 7), null],
      ],
    }),
    points: [
      'In the C form finger 2 is on the root of string 2; in its minor it is finger 3.',
      'In the D form finger 4 is on it, and the hand lies nearer to the nut.',
      'A triad that you know is inside each of them: find it first, then add the rest.',
    ],
  },
];
