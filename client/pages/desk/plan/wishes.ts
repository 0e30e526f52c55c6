import { levelName, levelsOf, type Levelled } from '../../../../shared/exercise/levels.ts';
import { stepOf, type PlanEdit } from '../../../../shared/plans/edit.ts';
import type { PlannedExercise } from '../../../../shared/plans/plan.ts';
import type { NoteNaming } from '../../../../shared/theory/naming.ts';
import type { LineWish } from './line-event.ts';
import { partWords, titleOf } from './words.ts';

/** Edits, and what they do in words. */
export interface Worded {
  readonly words: string;
  readonly edits: readonly PlanEdit[];
}

/** What a wish for an exercise comes to; null where it changes nothing. `newId` is for a copy. */
export function editsFor(
  wish: Exclude<LineWish, { kind: 'make' }>,
  own: PlannedExercise,
  exercises: readonly PlannedExercise[],
  { naming, newId }: { readonly naming: NoteNaming; readonly newId: string },
): Worded | null {
  const { id } = own;
  const title = titleOf(own, naming);
  const one = (words: string, edit: PlanEdit | null): Worded | null =>
    edit && { words: `${words} ${title}`, edits: [edit] };
  const levels = (words: string, to: Levelled) =>
    one(`${words} of`, { kind: 'change', id, to: { exercise: to.exercise, harder: to.harder } });
  switch (wish.kind) {
    case 'step':
      return one('move', stepOf(exercises, id, wish.by));
    case 'part':
      return wish.part === own.part
        ? null
        : {
            words: `put ${title} under ${partWords[wish.part]}`,
            edits: [{ ...wish, kind: 'move', id, before: null }],
          };
    case 'move':
      return wish.before === id ? null : one('move', { ...wish, kind: 'move', id });
    case 'duplicate':
      return one('duplicate', { kind: 'duplicate', id, newId });
    case 'take':
      return one('take out', { kind: 'remove', id });
    case 'take-level':
      return levels(
        `take out the ${levelName(wish.level).toLowerCase()} level`,
        levelled(
          levelsOf(own).filter((_, index) => index !== wish.level - 1),
          own,
        ),
      );
    case 'swap-level': {
      const all = [...levelsOf(own)];
      const easier = wish.level - 2;
      all.splice(easier, 2, ...all.slice(easier, easier + 2).reverse());
      return levels('swap levels', levelled(all, own));
    }
    case 'ask-instead': {
      const all = levelsOf(own).map((exercise, index) =>
        index === wish.level - 1 ? wish.exercise : exercise,
      );
      return levels('ask from another root instead', levelled(all, own));
    }
  }
}

function levelled([exercise, ...harder]: readonly Levelled['exercise'][], own: Levelled): Levelled {
  return { exercise: exercise ?? own.exercise, harder };
}
