import { isEmpty } from '../../../../shared/exercise/answer.ts';
import type { Verdict } from '../../../../shared/exercise/verdict.ts';
import type { DeskAnswerView, DeskStudentView, DeskView } from '../../../../shared/protocol/views.ts';
import { currentRound } from './steps.ts';

/** What a student's row says first. */
export type Standing =
  'slip' | 'unclear' | 'late' | 'right' | 'placing' | 'waiting' | 'here' | 'away' | 'absent';

/** Slips first: who needs the teacher, then who is fine, then who isn't there. */
const order: readonly Standing[] = [
  'slip',
  'unclear',
  'late',
  'right',
  'placing',
  'waiting',
  'away',
  'absent',
];

/** The answer that counts: a late one only where the teacher lets it. */
export function countedAnswer(student: DeskStudentView): DeskAnswerView | null {
  return student.late?.counted ? student.late : student.answer;
}

export function isRight(answer: { readonly verdict: Verdict; readonly accepted: boolean }): boolean {
  return answer.accepted || answer.verdict.kind === 'right';
}

/** While a round is open, an answer in the making is no slip yet: only what is done is looked at. */
export function settledAnswers(view: DeskView): readonly DeskAnswerView[] {
  const open = currentRound(view)?.phase === 'open';
  return view.students.flatMap((student) => {
    const answer = countedAnswer(student);
    return answer && (answer.done || !open) && !isEmpty(answer) ? [answer] : [];
  });
}

export function standingOf(student: DeskStudentView, open: boolean): Standing {
  const answer = countedAnswer(student);
  if (answer && !isEmpty(answer)) {
    if (open && !answer.done) return 'placing';
    if (isRight(answer)) return 'right';
    return answer.verdict.kind === 'unclear' ? 'unclear' : 'slip';
  }
  if (student.late) return 'late';
  return student.presence === 'here' ? 'waiting' : student.presence;
}

/** The drawer's order: by standing, then by name; the order of equals never jumps. */
export function inOrder(
  students: readonly DeskStudentView[],
  open: boolean,
): readonly { readonly student: DeskStudentView; readonly standing: Standing }[] {
  return students
    .map((student) => ({ student, standing: standingOf(student, open) }))
    .sort(
      (a, b) =>
        order.indexOf(a.standing) - order.indexOf(b.standing) || a.student.name.localeCompare(b.student.name),
    );
}

export interface Figures {
  /** How many are done (from the hold on: how many have placed something). */
  readonly done: number;
  /** Whom the round waits for: everybody here, and whoever has answered. */
  readonly of: number;
  readonly here: number;
  readonly right: number;
  /** Answers that are not right. */
  readonly slips: number;
}

export function figuresOf(view: DeskView): Figures {
  const settled = settledAnswers(view);
  const right = settled.filter(isRight).length;
  return {
    done: settled.length,
    of: view.students.filter((student) => student.presence === 'here' || countedAnswer(student)).length,
    here: view.students.filter((student) => student.presence === 'here').length,
    right,
    slips: settled.length - right,
  };
}

/** Advice waits until answers are in: from the hold on, or when all are done. */
export function isSettled(view: DeskView): boolean {
  const round = currentRound(view);
  if (!round) return false;
  const { done, of } = figuresOf(view);
  return done > 0 && (round.phase !== 'open' || done === of);
}

/** Whole per cent; null where nobody answered. */
export function percent(right: number, of: number): number | null {
  return of === 0 ? null : Math.round((100 * right) / of);
}
