import type { SlipCause } from './verdict.ts';

const names: Readonly<Record<SlipCause, string>> = {
  'string-6-map': 'String-6 map',
  'string-3-to-2-step': 'String-3-to-2 step',
  'major-for-minor': 'Major for minor',
  'minor-for-major': 'Minor for major',
  'right-note-wrong-string': 'Right note, another string',
  'wrong-octave': 'Another octave',
  'strings-reversed': 'Strings reversed',
  'outside-range': 'Outside the range',
  'wrong-form': 'Another form',
  'one-fret-off': 'One fret off',
  'extra-tone': 'Extra tone',
  'missing-tone': 'Missing tone',
  'other-place': 'Another place',
};

/** Every cause; those that say why come before those that only say what. */
export const slipCauses = Object.keys(names) as readonly SlipCause[];

/** The slip's name, for the Desk: a Stand says it in plain words. */
export function slipName(cause: SlipCause): string {
  return names[cause];
}

/** What a Stand says over its explanation. */
export const slipHeadings: Readonly<Record<SlipCause, string>> = {
  'string-6-map': 'The fret of another string',
  'string-3-to-2-step': 'The short step, string 3 to 2',
  'major-for-minor': 'The major third came in',
  'minor-for-major': 'The minor third came in',
  'right-note-wrong-string': 'The right note, on another string',
  'wrong-octave': 'The right note, an octave away',
  'strings-reversed': 'The strings, counted from the other side',
  'missing-tone': 'Not all of it yet',
  'extra-tone': 'One note more',
  'outside-range': 'Right notes, other frets',
  'wrong-form': 'The right notes, another form',
  'one-fret-off': 'One fret beside',
  'other-place': 'It lies elsewhere',
};
