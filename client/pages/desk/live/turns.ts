import type { StudentId } from '../../../../shared/protocol/ids.ts';
import type { DeskView } from '../../../../shared/protocol/views.ts';

/** Whether students play one after another, as the teacher gives the turn. */
export function goesByTurns({ closed, settings }: DeskView): boolean {
  return !closed && settings.playing === 'turns';
}

/** Down the register over those who are here; after the last it is nobody's turn (SPEC TURN-4). */
export function nextTurn({ students, turn }: DeskView): StudentId | null {
  const after = students.findIndex(({ id }) => id === turn) + 1;
  return students.slice(after).find(({ presence }) => presence === 'here')?.id ?? null;
}
