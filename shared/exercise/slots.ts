import { stringNumbers } from '../theory/fretboard.ts';
import { formatName, type NoteNaming } from '../theory/naming.ts';
import type { Letter } from '../theory/pitch.ts';
import type { Exercise } from './exercise.ts';
import { rootFingerOf } from './extras.ts';
import type { Slots } from './messages.ts';
import { list, rangeText } from './phrases.ts';
import { instrumentOf } from './roots.ts';
import { isMinorLike } from './twins.ts';
import { subjectOf } from './wording.ts';

/** What sentences about an exercise may need; a slot that this one has not stays empty, for no sentence uses it. */
export function slotsOf(exercise: Exercise, naming: NoteNaming): Slots {
  const note = (letter: Letter) => formatName({ letter, alteration: 0 }, naming);
  const isPlayed = exercise.kind === 'build' || exercise.kind === 'scale';
  const strings = exercise.kind === 'build' && 'strings' in exercise.voicing ? exercise.voicing.strings : [];
  return {
    root: formatName(exercise.root, naming),
    string: exercise.rootString,
    last: stringNumbers(instrumentOf(exercise)).length,
    range: exercise.range ? rangeText(exercise.range) : 'the frets asked for',
    subject: subjectOf(exercise, naming),
    strings: list([...strings].sort((a, b) => b - a)),
    bass: exercise.kind === 'build' && exercise.bass ? formatName(exercise.bass, naming) : '',
    other: isPlayed && isMinorLike(exercise) ? 'major' : 'minor',
    finger: isPlayed ? (rootFingerOf(exercise) ?? '') : '',
    b: note('B'),
    c: note('C'),
    e: note('E'),
    f: note('F'),
  };
}
