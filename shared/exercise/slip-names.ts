import { stringNumbers, type Instrument } from '../theory/fretboard.ts';
import { neighbourSteps, usualStep } from '../theory/string-steps.ts';
import type { SlipCause } from './verdict.ts';

const names: Readonly<Record<SlipCause, string>> = {
  'low-string-map': 'String-{last} map',
  'low-string-box': 'Box from string {last}',
  'short-step': 'Uneven string step',
  'major-for-minor': 'Major for minor',
  'minor-for-major': 'Minor for major',
  'letters-two-frets': 'Two frets for every letter',
  'nut-as-one': 'Nut counted as fret 1',
  'mark-drift': 'Drawn to a position mark',
  'sharp-for-flat': 'Accidental turned round',
  'relative-root': 'Relative root',
  'tuning-ignored': 'Usual tuning assumed',
  'capo-ignored': 'Capo left out',
  'strings-reversed': 'Strings reversed',
  'frets-mirrored': 'Frets mirrored',
  'next-string': 'One string over',
  'right-note-wrong-string': 'Right note, another string',
  'wrong-octave': 'Another octave',
  'outside-range': 'Outside the range',
  'wrong-form': 'Another form',
  'wrong-bass': 'Another bass',
  'wrong-order': 'Another order',
  'wrong-root-mark': 'Root mark elsewhere',
  'wrong-finger': 'Another finger',
  untapped: 'Place not tapped',
  'muted-string-sounded': 'Muted string sounded',
  'sounding-string-muted': 'Sounding string muted',
  'one-fret-off': 'One fret off',
  'extra-tone': 'Extra tone',
  'missing-tone': 'Missing tone',
  'other-place': 'Another place',
  'other-name': 'Another name',
};

/** Every cause; those that say why come before those that only say what. */
export const slipCauses = Object.keys(names) as readonly SlipCause[];

/** The slip's name on this instrument, for the Desk: a Stand says it in plain words. "String-6 map" on a guitar. */
export function slipName(cause: SlipCause, instrument: Instrument): string {
  const steps = neighbourSteps(instrument);
  const usual = usualStep(steps);
  const [odd, ...others] = steps.filter(({ frets }) => usual !== undefined && frets !== usual);
  if (cause === 'short-step' && odd && others.length === 0)
    return `String-${String(odd.lower)}-to-${String(odd.upper)} step`;
  return names[cause].replace('{last}', String(stringNumbers(instrument).length));
}

/** What a Stand says over its explanation. */
export const slipHeadings: Readonly<Record<SlipCause, string>> = {
  'low-string-map': 'The fret of another string',
  'low-string-box': 'The pattern of another root',
  'short-step': 'The step that is not like the others',
  'major-for-minor': 'The major third came in',
  'minor-for-major': 'The minor third came in',
  'letters-two-frets': 'Not every letter is two frets',
  'nut-as-one': 'Counted from the nut as 1',
  'mark-drift': 'The mark beside the place',
  'sharp-for-flat': 'The accidental, the other way',
  'relative-root': 'The relative’s root',
  'tuning-ignored': 'Another tuning',
  'capo-ignored': 'The capo counts',
  'strings-reversed': 'The strings, counted from the other side',
  'frets-mirrored': 'The frets, read the other way',
  'next-string': 'One string over',
  'right-note-wrong-string': 'The right note, on another string',
  'wrong-octave': 'The right note, an octave away',
  'outside-range': 'Right notes, other frets',
  'wrong-form': 'The right notes, another form',
  'wrong-bass': 'The right chord, another bass',
  'wrong-order': 'The right notes, another order',
  'wrong-root-mark': 'Where is the root?',
  'wrong-finger': 'The right notes, another finger',
  untapped: 'One tap is missing',
  'muted-string-sounded': 'A string that stays silent',
  'sounding-string-muted': 'Not every string of it sounds',
  'one-fret-off': 'One fret beside',
  'extra-tone': 'One note more',
  'missing-tone': 'Not all of it yet',
  'other-place': 'It lies elsewhere',
  'other-name': 'Another name',
};
