import { randomInt } from 'node:crypto';

/** All that the demo invents: the school, its people, and what they work on. */

export const school = 'Alderwick Community Music School';
export const groupName = 'Thursday Strings';
export const teacherName = 'Orla Quillfeather';

/** Here from the start of today's class. */
export const regulars = [
  'Ansel',
  'Brida',
  'Corin',
  'Delphy',
  'Edda',
  'Fenno',
  'Gisla',
  'Hob',
  'Jory',
  'Kitto',
  'Lowri',
  'Merrin',
];
/** Who answers by playing, where that is possible. */
export const players = ['Brida', 'Lowri'];
/** On the register, and late today. */
export const latecomer = 'Oriel';
/** On the register and not simulated: the name for whoever tries a Stand. */
export const guest = 'Nessa';
/** Not on the register: asks to come in. */
export const newcomer = 'Pim';

const words = ['amber', 'birch', 'cedar', 'copper', 'linen', 'maple', 'pebble', 'quiet', 'river', 'walnut'];

/** Made anew for each demo: other devices of the network reach it too. */
export function newPassphrase() {
  return `${words[randomInt(10)]} ${words[randomInt(10)]} ${randomInt(1000, 10_000)}`;
}

const natural = (letter) => ({ letter, alteration: 0 });
const flat = (letter) => ({ letter, alteration: -1 });
const at = (low, high = low) => ({ low, high });
const onStringTwo = { instrument: 'guitar', rootString: 2, strictness: 'string', range: null };
const triad = { kind: 'build', voicing: { kind: 'form', form: 'triad-321', full: false } };
const pentatonic = {
  kind: 'scale',
  scale: 'minor-pentatonic',
  coverage: 'every-pitch',
  rootFinger: 1,
  order: 'up',
};

export const plan = {
  title: 'The root on string 2',
  exercises: [
    { ...onStringTwo, kind: 'find', root: natural('D') },
    { ...onStringTwo, ...triad, root: natural('E'), quality: 'minor' },
    {
      ...onStringTwo,
      kind: 'name',
      root: natural('F'),
      place: { string: 2, fret: 6 },
      wanted: 'note',
      strictness: 'place',
      range: at(6),
    },
    {
      ...onStringTwo,
      ...triad,
      root: natural('A'),
      quality: 'minor',
      strictness: 'place',
      range: at(10),
      marksRoot: true,
    },
    { ...onStringTwo, kind: 'find', root: natural('F'), strictness: 'range', range: at(5, 10) },
    {
      ...onStringTwo,
      kind: 'build',
      root: flat('E'),
      quality: 'major',
      voicing: { kind: 'form', form: 'C', full: false },
    },
    { ...onStringTwo, ...pentatonic, root: natural('E'), strictness: 'place', range: at(5) },
    { ...onStringTwo, ...triad, root: natural('C'), quality: 'major', strictness: 'place', range: at(13) },
  ].map((exercise) => ({ exercise, seconds: null })),
};

/** How many of the plan's exercises the class before today's met. */
export const metBefore = 5;
