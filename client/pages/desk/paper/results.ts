import { isEmpty, type Answer } from '../../../../shared/exercise/answer.ts';
import type { Exercise } from '../../../../shared/exercise/exercise.ts';
import { judge } from '../../../../shared/exercise/judge.ts';
import {
  atLevel,
  exerciseAt,
  levelsOf,
  type Level,
  type Levelled,
} from '../../../../shared/exercise/levels.ts';
import type { Verdict } from '../../../../shared/exercise/verdict.ts';
import type { PlannedExercise } from '../../../../shared/plans/plan.ts';
import type { NoteNaming } from '../../../../shared/theory/naming.ts';
import type { PaperAnswer, PaperResult, Student } from '../api.ts';
import { cellKey, type Draft } from './draft.ts';
import { readCell } from './read-cell.ts';

/** One cell of the grid as it is read. */
export type Cell =
  | { readonly kind: 'empty' }
  | { readonly kind: 'unread'; readonly why: string }
  | {
      readonly kind: 'judged';
      readonly exercise: Exercise;
      readonly answer: Answer;
      readonly verdict: Verdict;
    };

/** Which level of an exercise a row is read at: as hard as there is one. */
export function levelIn(draft: Draft, studentId: string, exercise: Levelled): Level {
  return Math.min(draft.levels[studentId] ?? 1, levelsOf(exercise).length) as Level;
}

/** Reads and judges cells; each text once, since a grid is drawn again with every key. */
export class Reader {
  readonly #naming: NoteNaming;
  readonly #read = new Map<Exercise, Map<string, Cell>>();

  constructor(naming: NoteNaming) {
    this.#naming = naming;
  }

  cell(planned: Levelled, level: Level, text: string): Cell {
    const exercise = exerciseAt(planned, level);
    const known = this.#read.get(exercise) ?? new Map<string, Cell>();
    this.#read.set(exercise, known);
    const cell = known.get(text) ?? cellOf(exercise, text, this.#naming);
    known.set(text, cell);
    return cell;
  }
}

function cellOf(exercise: Exercise, text: string, naming: NoteNaming): Cell {
  const read = readCell(exercise, text, naming);
  if (!read.ok) return { kind: 'unread', why: read.error };
  const answer = read.value;
  if (!answer || isEmpty(answer)) return { kind: 'empty' };
  return { kind: 'judged', exercise, answer, verdict: judge(exercise, answer) };
}

/** All that is in the grid, to be sent; and how many cells can't be read. */
export function resultsIn(
  draft: Draft,
  students: readonly Student[],
  exercises: readonly PlannedExercise[],
  reader: Reader,
): { readonly results: readonly PaperResult[]; readonly answers: number; readonly unread: number } {
  let unread = 0;
  const results = students.flatMap(({ id: studentId }): PaperResult[] => {
    const answers = exercises.flatMap((planned): PaperAnswer[] => {
      const level = levelIn(draft, studentId, planned);
      const cell = reader.cell(planned, level, draft.cells[cellKey(studentId, planned.id)] ?? '');
      if (cell.kind === 'unread') unread += 1;
      return cell.kind === 'judged' ? [{ exerciseId: planned.id, ...atLevel(cell.answer, level) }] : [];
    });
    return answers.length > 0 ? [{ studentId, answers }] : [];
  });
  return { results, answers: results.reduce((sum, { answers }) => sum + answers.length, 0), unread };
}
