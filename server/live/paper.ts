import { setImmediate } from 'node:timers/promises';
import { failure, success, type Result } from '../../shared/lib/result.ts';
import type { ErrorCode } from '../../shared/protocol/errors.ts';
import type { ClassId, Time } from '../../shared/protocol/ids.ts';
import { decideForDesk, type DeskContext } from '../classroom/desk-commands.ts';
import { decidePaperRound, type PaperRound } from '../classroom/paper.ts';
import { reduce } from '../classroom/reduce.ts';
import type { Change, ClassState, Student } from '../classroom/state.ts';
import type { ClassStore, Group, NewClass } from '../store/store.ts';
import type { NewId } from './ports.ts';

export interface PaperResults {
  /** Of the class to be: the same again changes nothing. */
  readonly id: ClassId;
  readonly group: Group;
  readonly students: readonly Student[];
  readonly code: NewClass['code'];
  readonly plan: NonNullable<NewClass['plan']>;
  /** When the quiz was held. */
  readonly at: Time;
  readonly rounds: readonly PaperRound[];
}

/** Keeps what was written on paper as a class that is over: whole, or not at all, and once. */
export async function keepPaper(
  store: ClassStore,
  newId: NewId,
  results: PaperResults,
): Promise<Result<'kept' | 'kept-before', ErrorCode>> {
  const { id, group, code, plan, at, rounds } = results;
  const before = await store.load(id);
  if (before && before.groupId !== group.id) return failure('not-allowed');
  if (before && before.rounds.length > 0) return success('kept-before');
  const decided = await decide(stateAtFirst(results), rounds, { now: at, newId });
  if (!decided.ok) return decided;
  // Where it broke off here, the class is there without its rounds, and the same sent again goes on.
  if (!before)
    await store.create({ id, groupId: group.id, code, plan, settings, openedAt: at, closedAt: at });
  await store.commit(id, decided.value);
  return success('kept');
}

const settings = { autoAdmit: false, score: 'class', ranking: false } as const;

async function decide(
  first: ClassState,
  rounds: readonly PaperRound[],
  context: DeskContext,
): Promise<Result<readonly Change[], ErrorCode>> {
  const changes: Change[] = [];
  let state = first;
  for (const round of rounds) {
    const decided = decidePaperRound(state, round, context);
    if (!decided.ok) return decided;
    changes.push(...decided.value);
    state = reduce(state, decided.value);
    // A register's answers take a while to judge: whoever is in a class meanwhile goes first.
    await setImmediate();
  }
  const closed = decideForDesk(state, { kind: 'close' }, context);
  return closed.ok ? success([...changes, ...closed.value]) : closed;
}

function stateAtFirst({ id, group, students, code, plan, at }: PaperResults): ClassState {
  const { teacherId, name, school, instrument, naming } = group;
  return {
    ...{ id, groupId: group.id, teacherId, code, group: name, school, instrument, naming },
    ...{ openedAt: at, closedAt: null, settings, plan, cursor: 0, stage: 'rest', show: null, turn: null },
    students: new Map(students.map((student) => [student.id, student])),
    seats: new Map(),
    rounds: [],
    lastTime: new Map(),
  };
}
