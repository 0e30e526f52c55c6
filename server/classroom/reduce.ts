import { assertNever } from '../../shared/lib/assert.ts';
import type { Change, ClassState, Round } from './state.ts';

/** The state after the changes; a change that was taken in already changes nothing. */
export function reduce(state: ClassState, changes: readonly Change[]): ClassState {
  return changes.reduce(reduceOne, state);
}

function reduceOne(state: ClassState, change: Change): ClassState {
  switch (change.kind) {
    case 'class':
      return { ...state, ...change.head };
    case 'student':
      return { ...state, students: withEntry(state.students, change.student.id, change.student) };
    case 'seat':
      return { ...state, seats: withEntry(state.seats, change.seat.id, change.seat) };
    case 'round': {
      const known = state.rounds.some((round) => round.id === change.round.id);
      if (!known)
        return {
          ...state,
          rounds: [...state.rounds, { ...change.round, answers: new Map(), late: new Map() }],
        };
      return withRound(state, change.round.id, (round) => ({ ...round, ...change.round }));
    }
    case 'answer': {
      const where = change.late ? 'late' : 'answers';
      return withRound(state, change.roundId, (round) => ({
        ...round,
        [where]: withEntry(round[where], change.studentId, change.answer),
      }));
    }
    default:
      return assertNever(change);
  }
}

function withEntry<Key, Value>(
  map: ReadonlyMap<Key, Value>,
  key: Key,
  value: Value,
): ReadonlyMap<Key, Value> {
  return new Map(map).set(key, value);
}

function withRound(state: ClassState, id: Round['id'], update: (round: Round) => Round): ClassState {
  return { ...state, rounds: state.rounds.map((round) => (round.id === id ? update(round) : round)) };
}
