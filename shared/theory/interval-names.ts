import { known } from '../lib/assert.ts';
import { alterationIn, numberIn, type Degree } from './interval.ts';

const numbers =
  'unison second third fourth fifth sixth seventh octave ninth tenth eleventh twelfth thirteenth'.split(' ');
const perfect: ReadonlySet<number> = new Set([1, 4, 5, 8, 11, 12]);
const ofPerfect = ['doubly diminished', 'diminished', 'perfect', 'augmented', 'doubly augmented'];
const ofOthers = ['diminished', 'minor', 'major', 'augmented', 'doubly augmented'];

/** The interval from the root up to a degree: `intervalName("b3")` is "minor third", of "1" "unison". */
export function intervalName(degree: Degree): string {
  const number = numberIn(degree);
  const name = known(numbers[number - 1], 'a name of the interval');
  const alteration = alterationIn(degree);
  if (alteration === 0 && (number === 1 || number === 8)) return name;
  const qualities = perfect.has(number) ? ofPerfect : ofOthers;
  return `${known(qualities[alteration + 2], 'a quality of the interval')} ${name}`;
}
