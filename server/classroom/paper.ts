import type { Answer } from '../../shared/exercise/answer.ts';
import { isEmpty } from '../../shared/exercise/answer.ts';
import { failure, success, type Result } from '../../shared/lib/result.ts';
import type { DeskCommand } from '../../shared/protocol/commands.ts';
import type { ErrorCode } from '../../shared/protocol/errors.ts';
import type { SendId, StudentId } from '../../shared/protocol/ids.ts';
import { decideForDesk, type DeskContext } from './desk-commands.ts';
import { reduce } from './reduce.ts';
import { currentRound } from './round.ts';
import type { Change, ClassState } from './state.ts';
import { answerFor, type Decision } from './student-commands.ts';

/** What students gave on paper to one exercise of the class's plan. */
export interface PaperRound {
  /** Of the exercise in the plan. */
  readonly index: number;
  readonly answers: readonly { readonly studentId: StudentId; readonly answer: Answer }[];
}

/** One round, from the question to the reveal, as if the teacher had entered every answer. */
export function decidePaperRound(state: ClassState, paper: PaperRound, context: DeskContext): Decision {
  const asked = inTurn(
    state,
    [
      { kind: 'select', index: paper.index },
      { kind: 'ask-planned', seconds: null },
    ],
    context,
  );
  if (!asked.ok) return asked;
  const round = currentRound(reduce(state, asked.value));
  if (!round) return failure('no-round');
  const entered: Change[] = [];
  for (const { studentId, answer } of paper.answers) {
    if (isEmpty(answer)) continue;
    if (!state.students.has(studentId)) return failure('student-unknown');
    const sent = { ...answer, sendId: context.newId() as SendId, done: true };
    const judged = answerFor(round, sent, context.now, 'teacher', undefined);
    if (!judged.ok) return judged;
    entered.push({ kind: 'answer', roundId: round.id, studentId, late: false, answer: judged.value });
  }
  const before = [...asked.value, ...entered];
  const revealed = inTurn(reduce(state, before), [{ kind: 'hold' }, { kind: 'reveal' }], context);
  return revealed.ok ? success([...before, ...revealed.value]) : revealed;
}

/** Steps of the teacher, one after another. */
function inTurn(
  state: ClassState,
  commands: readonly DeskCommand[],
  context: DeskContext,
): Result<readonly Change[], ErrorCode> {
  const changes: Change[] = [];
  for (const command of commands) {
    const decided = decideForDesk(reduce(state, changes), command, context);
    if (!decided.ok) return decided;
    changes.push(...decided.value);
  }
  return success(changes);
}
