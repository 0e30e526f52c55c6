import { playingOf } from '../../../../shared/exercise/input.ts';
import { levelsOf } from '../../../../shared/exercise/levels.ts';
import type { StudentId } from '../../../../shared/protocol/ids.ts';
import type { DeskView } from '../../../../shared/protocol/views.ts';
import { currentRound } from './steps.ts';

/** Whether students play one after another, as the teacher gives the turn; not where a name is asked. */
export function goesByTurns(view: DeskView): boolean {
  const round = currentRound(view);
  const canBePlayed = !round || levelsOf(round).some((exercise) => playingOf(exercise) !== null);
  return !view.closed && view.settings.playing === 'turns' && canBePlayed;
}

/** Down the register over those who are here; after the last it is nobody's turn (SPEC TURN-4). */
export function nextTurn({ students, turn }: DeskView): StudentId | null {
  const after = students.findIndex(({ id }) => id === turn) + 1;
  return students.slice(after).find(({ presence }) => presence === 'here')?.id ?? null;
}
