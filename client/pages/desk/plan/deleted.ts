import type { PlanContent } from '../../../../shared/plans/plan.ts';

/** The plan that was deleted last on this Desk: its group's page offers to bring it back. */
let last: { readonly groupId: string; readonly plan: PlanContent } | null = null;

export function rememberDeleted(groupId: string, plan: PlanContent): void {
  last = { groupId, plan };
}

export function deletedFrom(groupId: string): PlanContent | null {
  return last?.groupId === groupId ? last.plan : null;
}

export function forgetDeleted(): void {
  last = null;
}
