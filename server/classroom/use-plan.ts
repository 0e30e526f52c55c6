import type { Change, ClassState, Plan } from './state.ts';
import { headOf, roundHead } from './round.ts';

/**
 * The class's copy taken anew (SPEC ROUND-5): it may have been changed meanwhile, so what was asked and the place in
 * the plan go with their exercises.
 */
export function usePlan(state: ClassState, plan: Plan | null): readonly Change[] {
  const before = state.plan?.exercises ?? [];
  const indexById = new Map(plan?.exercises.map(({ id }, index) => [id, index]));
  const nowAt = before.map(({ id }) => indexById.get(id));
  const rounds = state.rounds.flatMap((round): readonly Change[] => {
    const planIndex = round.planIndex === null ? null : (nowAt[round.planIndex] ?? null);
    return planIndex === round.planIndex
      ? []
      : [{ kind: 'round', round: { ...roundHead(round), planIndex } }];
  });
  return [
    { kind: 'class', head: { ...headOf(state), plan, cursor: cursorIn(nowAt, state.cursor) } },
    ...rounds,
  ];
}

/** The exercise that was next, or the one after it that is still there; else what follows the last one before it. */
function cursorIn(nowAt: readonly (number | undefined)[], cursor: number): number {
  const next = nowAt.slice(cursor).find((index) => index !== undefined);
  const last = nowAt.slice(0, cursor).findLast((index) => index !== undefined);
  return next ?? (last === undefined ? 0 : last + 1);
}
