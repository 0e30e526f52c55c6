import type { Level } from '../../../../shared/exercise/levels.ts';
import type { KeyStore } from '../../../lib/key-store.ts';
import { randomId } from '../../../lib/random-id.ts';

/** What has been typed so far; kept on this device until it is saved. */
export interface Draft {
  /** Of the class that it becomes: whatever is sent twice is kept once. */
  readonly id: string;
  /** `2026-11-25`. */
  readonly day: string;
  /** As typed, by `cellKey`. */
  readonly cells: Readonly<Record<string, string>>;
  /** By student; the first where there is none. */
  readonly levels: Readonly<Record<string, Level>>;
}

export function cellKey(studentId: string, exerciseId: string): string {
  return `${studentId} ${exerciseId}`;
}

export function newDraft(day: string): Draft {
  return { id: randomId(), day, cells: {}, levels: {} };
}

/** Under which name the device keeps it. */
export const draftEntry = (planId: string): string => `rootcall.desk.paper.${planId}`;

export function readDraft(storage: KeyStore, planId: string): Draft | null {
  try {
    const kept: unknown = JSON.parse(storage.get(draftEntry(planId)) ?? 'null');
    if (typeof kept !== 'object' || kept === null) return null;
    const { id, day, cells, levels } = kept as Partial<Draft>;
    const isWhole = typeof id === 'string' && typeof day === 'string' && cells && levels;
    return isWhole ? { id, day, cells, levels } : null;
  } catch {
    return null;
  }
}

export function keepDraft(storage: KeyStore, planId: string, draft: Draft): void {
  storage.set(draftEntry(planId), JSON.stringify(draft));
}

export function forgetDraft(storage: KeyStore, planId: string): void {
  storage.remove(draftEntry(planId));
}
