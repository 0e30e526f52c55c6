import { find, inParts, name } from './making.ts';
import type { ReadyPlan } from './ready-plan.ts';

/** The notes of string 2, without counting from string 6. */
export const string2Notes: readonly ReadyPlan[] = [
  {
    id: 'string-2-near-the-nut',
    title: 'Notes of string 2, near the nut',
    aim: 'Find the first notes of string 2 without thinking of string 6.',
    minutes: 12,
    exercises: inParts({
      'warm-up': [[name('B', 2, 0), 30]],
      new: [
        [find('C', 2), 40],
        [find('D', 2), 40],
        [find('E', 2), 40],
        [find('F', 2), 40],
      ],
      check: [
        [find('B', 2), 30],
        [name('D', 2, 3), 30],
      ],
    }),
    points: [
      'String 2, second thinnest, is {B} when it is open.',
      '{C} is one fret up, {D} two more, {E} two more, {F} one more: frets 1, 3, 5 and 6.',
      'From {B} to {C} and from {E} to {F} it is one fret only.',
      'Say the note, then play it, then let it ring.',
    ],
  },
  {
    id: 'string-2-to-fret-12',
    title: 'Notes of string 2, up to fret 12',
    aim: 'Know string 2 from the nut to fret 12, with sharps and flats.',
    minutes: 15,
    exercises: inParts({
      'warm-up': [
        [find('C', 2), 30],
        [find('E', 2), 30],
      ],
      new: [
        [find('G', 2), 40],
        [find('A', 2), 40],
        [find('F#', 2), 40],
        [find('Bb', 2), 40],
      ],
      check: [
        [find('F', 2), 30],
        [name('Ab', 2, 9), 30],
      ],
    }),
    points: [
      '{G} is fret 8, {A} fret 10, and at fret 12 the string is {B} again.',
      'A sharp is one fret up, a flat one fret down: {F#} is fret 7, {Bb} fret 11.',
      'The position marks show where you are, but most of these notes lie beside a mark and not on it.',
    ],
  },
];
