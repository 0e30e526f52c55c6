import { along, between, find, form, frets, inParts, position } from './making.ts';
import type { ReadyPlan } from './ready-plan.ts';

/** From one root along the neck. */
export const string2Roads: readonly ReadyPlan[] = [
  {
    id: 'string-2-both-directions',
    title: 'Both directions from one root',
    aim: 'Go from one root on string 2 towards the nut and towards the bridge.',
    minutes: 22,
    exercises: inParts({
      'warm-up': [[find('B', 2), 30]],
      new: [
        [form('D', 'A', 'major', 2, 10), 60],
        [form('C', 'A', 'major', 2, 10), 60],
        [position('minor-pentatonic', 'F#', 2, 7, 4), 120],
        [position('minor-pentatonic', 'F#', 2, 7, 1), 120],
      ],
      check: [
        [position('major-pentatonic', 'Ab', 2, 9, 4), 120],
        [position('major-pentatonic', 'Ab', 2, 9, 2), null],
      ],
    }),
    points: [
      'One root, two hands: finger 4 on it puts the hand towards the nut, finger 1 or 2 more towards the bridge.',
      'Keep the root ringing in the ear while the hand moves.',
      'Choose the side where the next chord lies.',
    ],
  },
  {
    id: 'string-2-joining-positions',
    title: 'Joining two positions',
    aim: 'Slide from one position into the next along string 2.',
    minutes: 25,
    exercises: inParts({
      'warm-up': [
        [position('minor-pentatonic', 'E', 2, 5, 4), 90],
        [position('minor-pentatonic', 'E', 2, 5, 1), 90],
      ],
      new: [
        [along('minor-pentatonic', 'E', 2, frets(5, 17)), 90],
        [between('minor-pentatonic', 'E', 2, frets(2, 8)), 180],
        [along('major-pentatonic', 'C', 2, frets(1, 13)), 90],
      ],
      check: [
        [between('major-pentatonic', 'Bb', 2, frets(8, 14)), 180],
        [along('minor-pentatonic', 'C#', 2, frets(2, 14)), null],
      ],
    }),
    points: [
      'Two neighbouring positions share notes; each shared note is a door.',
      'Go up one string, and watch the distances: two frets or three.',
      'The hand moves before the beat, so that the note comes in time.',
    ],
  },
];
