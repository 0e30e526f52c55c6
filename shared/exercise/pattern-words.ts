import type { Instrument } from '../theory/fretboard.ts';
import type { Pattern } from './pattern.ts';
import { uncapital } from './phrases.ts';
import { slipName } from './slip-names.ts';
import type { SlipCause } from './verdict.ts';

/** What came again; `{last}` is the number of the last string, `{step}` the name of the odd step. */
const sayings: Readonly<Record<SlipCause, string>> = {
  'low-string-map': 'The fret of string {last} came',
  'low-string-box': 'The pattern from string {last} came',
  'short-step': 'The {step} was counted like the others',
  'major-for-minor': 'The major third came for the minor',
  'minor-for-major': 'The minor third came for the major',
  'letters-two-frets': 'Every letter was counted as two frets',
  'nut-as-one': 'The nut was counted as fret 1',
  'mark-drift': 'The answer slid to a marked fret',
  'sharp-for-flat': 'Sharp and flat changed places',
  'relative-root': 'The relative root came',
  'tuning-ignored': 'The strings were read in the usual tuning',
  'capo-ignored': 'The capo was left out of the count',
  'strings-reversed': 'Strings were counted from the other side',
  'frets-mirrored': 'Frets were mirrored',
  'next-string': 'The fret came on a neighbouring string',
  'right-note-wrong-string': 'The right note came on another string',
  'wrong-octave': 'The right note came an octave away',
  'outside-range': 'Right notes came outside the frets asked for',
  'wrong-form': 'The right notes came in another form',
  'wrong-bass': 'Another note than asked was lowest',
  'wrong-order': 'The right notes came in another order',
  'wrong-root-mark': 'Another note was marked as the root',
  'wrong-finger': 'Another finger was named for the root',
  untapped: 'A place was not tapped',
  'muted-string-sounded': 'A string sounded that stays silent',
  'sounding-string-muted': 'A string stayed silent that sounds',
  'one-fret-off': 'The answer lay one fret off',
  'extra-tone': 'A note too many came',
  'missing-tone': 'A note was missing',
  'other-place': 'The answer lay elsewhere',
  'other-name': 'Another name came',
};

/** "The fret of string 6 came in 3 of 5 rounds.": one sentence for the Desk, under 20 words (SPEC PATTERN). */
export function patternText(
  { cause, rounds, of }: Pattern,
  who: 'student' | 'class',
  instrument: Instrument,
): string {
  const saying = sayings[cause]
    .replace('{last}', String(instrument.openStrings.length))
    .replace('{step}', uncapital(slipName('short-step', instrument)));
  const subject = who === 'student' ? saying : `Several students: ${uncapital(saying)}`;
  return `${subject} in ${String(rounds)} of ${String(of)} rounds.`;
}
