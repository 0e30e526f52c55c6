import { chartNotes, chartWordings } from '../../shared/exercise/chart.ts';
import type { Exercise } from '../../shared/exercise/exercise.ts';
import { inputOf } from '../../shared/exercise/input.ts';
import { answerKey } from '../../shared/exercise/key.ts';
import { silentIn } from '../../shared/exercise/silent.ts';
import { wordingsOf } from '../../shared/exercise/wording.ts';
import { known } from '../../shared/lib/assert.ts';
import { perObject } from '../../shared/lib/per-object.ts';
import type { StudentId } from '../../shared/protocol/ids.ts';
import type { RevealedLevel, ShowView, TaskView } from '../../shared/protocol/views.ts';
import { currentRound, isOnGroupNeck, joinedStudents } from './round.ts';
import type { ClassState, Round } from './state.ts';

/** Who is connected just now: known to the process alone, kept nowhere. */
export interface Presence {
  readonly students: ReadonlySet<StudentId>;
  readonly boards: number;
}

/** A question in words and nothing that would answer it. */
export const taskView = perObject((exercise: Exercise): TaskView => {
  const input = inputOf(exercise);
  // The range of one place would say where it is.
  const statesRange = input.kind === 'places' && exercise.strictness !== 'place';
  return {
    wording: wordingsOf(exercise),
    instrument: exercise.instrument,
    input,
    range: statesRange ? exercise.range : null,
  };
});

/** A level after the reveal: the question and its key. */
export const revealedLevel = perObject((exercise: Exercise): RevealedLevel => ({
  task: taskView(exercise),
  reveal: { exercise, notes: answerKey(exercise) },
}));

export function showView(state: ClassState): ShowView | null {
  if (!state.show) return null;
  if (state.show.kind === 'taps') {
    // The group may have changed its instrument since.
    return { kind: 'taps', places: state.show.places.filter((place) => isOnGroupNeck(state, place)) };
  }
  const { charts, at } = state.show;
  const chart = known(charts[at], 'the chart on the stage');
  const notes = chartNotes(chart);
  return {
    kind: 'chart',
    wording: chartWordings(chart),
    instrument: chart.instrument,
    notes,
    silent: chart.kind === 'map' ? [] : silentIn(chart, notes),
    step: charts.length > 1 ? { number: at + 1, of: charts.length } : null,
  };
}

/**
 * Which exercise of the plan is on the stage, or else comes next, counted from 1; null outside the plan.
 */
export function nextView(state: ClassState): { readonly number: number; readonly of: number } | null {
  const of = state.plan?.exercises.length ?? 0;
  const round = currentRound(state);
  const index = round ? round.planIndex : state.cursor;
  return index !== null && index < of ? { number: index + 1, of } : null;
}

/** Students who are here: joined and connected. */
export function hereCount(state: ClassState, presence: Presence): number {
  return [...joinedStudents(state)].filter((id) => presence.students.has(id)).length;
}

/** Whom a round waits for: everybody here, and whoever has answered. */
export function expectedCount(state: ClassState, round: Round, presence: Presence): number {
  const expected = new Set([...joinedStudents(state)].filter((id) => presence.students.has(id)));
  for (const id of round.answers.keys()) expected.add(id);
  return expected.size;
}
