import { namedDegrees, type Answer, type Named } from '../../../../shared/exercise/answer.ts';
import type {
  BuildExercise,
  Exercise,
  FindExercise,
  NameExercise,
} from '../../../../shared/exercise/exercise.ts';
import { inputOf } from '../../../../shared/exercise/input.ts';
import { numberText } from '../../../../shared/exercise/phrases.ts';
import { failure, success, type Result } from '../../../../shared/lib/result.ts';
import { isOnNeck, place, stringNumbers, type Place } from '../../../../shared/theory/fretboard.ts';
import { intervalName } from '../../../../shared/theory/interval-names.ts';
import { degreeSign, formatName, parseName, type NoteNaming } from '../../../../shared/theory/naming.ts';
import { neckOf } from '../live/answer-text.ts';

/** What a cell of the grid says: an answer, none, or why it can't be read. */
export type Reading = Result<Answer | null, string>;

/**
 * Reads what was typed for what a student wrote (SPEC PAPER-5). `+` and `-` say how it was. Else the fret for _find_
 * ("10", or "3/5" for string 3, fret 5), the name for _name_, and for a chord a fret or x for every string.
 */
export function readCell(exercise: Exercise, typed: string, naming: NoteNaming): Reading {
  const text = typed.trim().replace(/\s+/g, ' ');
  if (text === '') return success(null);
  if (text === '+') return success({ places: [], teacherSays: 'right' });
  if (/^[-−–]$/.test(text)) return success({ places: [], teacherSays: 'not-yet' });
  switch (exercise.kind) {
    case 'find':
      return placed(exercise, readFind(exercise, text));
    case 'name':
      return readName(exercise, text, naming);
    case 'build':
      return isMarkedOnly(exercise) ? failure(markOnly) : placed(exercise, readChord(exercise, text));
    case 'scale':
      return failure(markOnly);
  }
}

const markOnly = 'Write + or -.';

/** Where places alone don't say it: a scale, and what asks for a root mark or a finger besides. */
export function isMarkedOnly(exercise: Exercise): boolean {
  const input = inputOf(exercise);
  return exercise.kind === 'scale' || (input.kind === 'places' && (input.marksRoot || input.asksFinger));
}

/** How the cells of an exercise are written, for its column. */
export function cellHint(exercise: Exercise, naming: NoteNaming): string {
  if (isMarkedOnly(exercise)) return '+ or -';
  switch (exercise.kind) {
    case 'find':
      return isOneString(exercise) ? `fret on string ${String(exercise.rootString)}` : 'string/fret';
    case 'name':
      if (exercise.wanted === 'note')
        return `note, such as ${formatName({ letter: 'B', alteration: -1 }, naming)}`;
      return exercise.wanted === 'degree' ? 'degree, such as b3' : 'interval, such as b3';
    case 'build':
      return `fret or x, from string ${String(stringNumbers(neckOf(exercise)).length)}`;
    case 'scale':
      return '+ or -';
  }
}

function isOneString({ strictness }: Exercise): boolean {
  return strictness === 'place' || strictness === 'string';
}

function readFind(exercise: FindExercise, text: string): Result<readonly Place[], string> {
  const places: Place[] = [];
  for (const word of text.split(/[\s,;]+/)) {
    const [, string, fret] = /^(?:(\d{1,2})[/:])?(\d{1,2})$/.exec(word) ?? [];
    if (fret === undefined) return failure(`“${word}” is no fret.`);
    if (string === undefined && !isOneString(exercise)) return failure('Write string/fret, such as 3/5.');
    places.push(place(Number(string ?? exercise.rootString), Number(fret)));
  }
  return success(places);
}

function readChord(exercise: BuildExercise, text: string): Result<readonly Place[], string> {
  const strings = stringNumbers(neckOf(exercise)).toReversed();
  const apart = text.split(/[\s,;]+/);
  // x54353 is as good where every fret is one digit.
  const words = apart.length === 1 && text.length === strings.length ? [...text] : apart;
  if (words.length !== strings.length)
    return failure(`Write a fret or x for each of ${numberText(strings.length)} strings.`);
  const places: Place[] = [];
  for (const [index, word] of words.entries()) {
    if (/^[x-]$/i.test(word)) continue;
    if (!/^\d{1,2}$/.test(word)) return failure(`“${word}” is no fret.`);
    places.push(place(strings[index] ?? 1, Number(word)));
  }
  return places.length > 0 ? success(places) : failure('Every string is silent. Leave it empty, or write -.');
}

function placed(exercise: Exercise, read: Result<readonly Place[], string>): Reading {
  if (!read.ok) return read;
  const off = read.value.find((spot) => !isOnNeck(neckOf(exercise), spot));
  return off
    ? failure(`String ${String(off.string)}, fret ${String(off.fret)} is not on this neck.`)
    : success({ places: read.value });
}

function readName(exercise: NameExercise, text: string, naming: NoteNaming): Reading {
  const named = exercise.wanted === 'note' ? readNote(text, naming) : readDegree(text);
  return named ? success({ places: [], named }) : failure(`“${text}” is no such name.`);
}

function readNote(text: string, naming: NoteNaming): Named | undefined {
  const note = parseName(text, naming);
  return note && { kind: 'note', note };
}

/** "b3", "♭3", "R" or "minor third". */
function readDegree(text: string): Named | undefined {
  const wanted = text.toLowerCase().replace('♭', 'b').replace('♯', '#');
  const degree = namedDegrees.find(
    (one) => one === wanted || degreeSign(one).toLowerCase() === wanted || intervalName(one) === wanted,
  );
  return degree && { kind: 'degree', degree };
}
