import { find, form, inParts, position } from './making.ts';
import type { ReadyPlan } from './ready-plan.ts';

/** Pentatonics and full scales in one position round a root on string 2. */
export const string2Scales: readonly ReadyPlan[] = [
  {
    id: 'string-2-minor-pentatonic',
    title: 'Minor pentatonic from string 2',
    aim: 'Lay the minor pentatonic under the hand with finger 1 on string 2.',
    minutes: 20,
    exercises: inParts({
      'warm-up': [
        [find('D', 2), 30],
        [form('triad-321', 'A', 'minor', 2, 10), 45],
      ],
      new: [
        [position('minor-pentatonic', 'A', 2, 10, 1), 120],
        [position('minor-pentatonic', 'D', 2, 3, 1), 120],
        [position('minor-pentatonic', 'F', 2, 6, 1), 120],
      ],
      check: [
        [position('minor-pentatonic', 'C#', 2, 2, 1), 120],
        [position('minor-pentatonic', 'B', 2, 12, 1), null],
      ],
    }),
    points: [
      'Finger 1 is on the root of string 2, and two notes lie on every string.',
      'String 3 alone begins one fret lower: from string 3 to string 2 is four frets, not five.',
      'Start on the root and end on it, so that the ear knows where home is.',
    ],
  },
  {
    id: 'string-2-major-pentatonic',
    title: 'Major pentatonic from string 2',
    aim: 'Lay the major pentatonic under the hand with finger 2 on string 2.',
    minutes: 20,
    exercises: inParts({
      'warm-up': [
        [find('F#', 2), 30],
        [form('C', 'F', 'major', 2, 6), 60],
      ],
      new: [
        [position('major-pentatonic', 'F', 2, 6, 2), 120],
        [position('major-pentatonic', 'Db', 2, 2, 2), 120],
        [position('major-pentatonic', 'Ab', 2, 9, 2), 120],
      ],
      check: [
        [position('major-pentatonic', 'A', 2, 10, 2), 120],
        [position('major-pentatonic', 'Eb', 2, 4, 2), null],
      ],
    }),
    points: [
      'Now finger 2 is on the root, as in the C form.',
      'The C form is inside it: see the chord first, then the two tones that come in.',
      'The relative minor pentatonic has the same notes and another home; here we end on the major root.',
    ],
  },
  {
    id: 'string-2-full-scales',
    title: 'Major and natural minor from string 2',
    aim: 'Fill both pentatonics up to full scales in the same position.',
    minutes: 25,
    exercises: inParts({
      'warm-up': [[position('major-pentatonic', 'D', 2, 3, 2), 90]],
      new: [
        [position('major', 'D', 2, 3, 2), 150],
        [position('major', 'Bb', 2, 11, 2), 150],
        [position('natural-minor', 'E', 2, 5, 1), 150],
        [position('natural-minor', 'F#', 2, 7, 1), 150],
      ],
      check: [
        [position('major', 'Ab', 2, 9, 2), 150],
        [position('natural-minor', 'C#', 2, 2, 1), null],
      ],
    }),
    points: [
      'To the major pentatonic come the fourth and the seventh.',
      'To the minor pentatonic come the second and the flat sixth.',
      'The pentatonic stays where it was: play it first, then put the two new tones in.',
    ],
  },
];
