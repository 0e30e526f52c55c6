import { scaleDegrees } from '../../../shared/theory/chord.ts';
import { parseNoteName } from '../../../shared/theory/pitch.ts';
import type { Key } from '../../../shared/theory/spelling.ts';

/** What is heard is named as the task names its own tones; all that a Stand has of these before the reveal is words. */

const task = /^(?:Find |Build )?([A-G])([♯♭]*)(.*)$/u;
/** What makes the third minor, behind the root's name: "m7", " minor pentatonic", " dorian mode"; not "maj7". */
const minorThird =
  /^(?:m(?!a)|°|ø|dim| (?:minor|natural minor|harmonic minor|melodic minor|dim|dorian|phrygian mode|locrian|blues))/u;

/** The key that the English title speaks of: E♭ minor of "Build E♭ minor"; C major where it names no root. */
export function keyInWords(title: string): Key {
  const [, letter = '', signs = '', kind = ''] = task.exec(title) ?? [];
  const root = parseNoteName(letter + signs.replaceAll('♯', '#').replaceAll('♭', 'b'));
  if (!root) return { root: { letter: 'C', alteration: 0 }, degrees: scaleDegrees('major') };
  return { root, degrees: scaleDegrees(minorThird.test(kind) ? 'natural-minor' : 'major') };
}
