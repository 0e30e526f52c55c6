import type { Named } from '../../../../shared/exercise/answer.ts';
import type { NameExercise } from '../../../../shared/exercise/exercise.ts';
import { judge } from '../../../../shared/exercise/judge.ts';
import { namedText, rightName } from '../../../../shared/exercise/name-words.ts';
import type { NoteNaming } from '../../../../shared/theory/naming.ts';

/** How many called the place by this name. */
export interface NamedCount {
  readonly text: string;
  readonly count: number;
  /** Of all names given, 0 to 1. */
  readonly share: number;
  readonly right: boolean;
}

/** What the place was called, the commonest name first; what is right is in it even where nobody said it. */
export function namedCounts(
  exercise: NameExercise,
  names: readonly Named[],
  naming: NoteNaming,
): readonly NamedCount[] {
  const counts = new Map<string, { readonly named: Named; count: number }>();
  for (const named of names) {
    const text = namedText(named, exercise.wanted, naming);
    const known = counts.get(text);
    if (known) known.count += 1;
    else counts.set(text, { named, count: 1 });
  }
  const isRight = (named: Named) => judge(exercise, { places: [], named }).kind === 'right';
  if (![...counts.values()].some(({ named }) => isRight(named))) {
    const right = rightName(exercise);
    counts.set(namedText(right, exercise.wanted, naming), { named: right, count: 0 });
  }
  return [...counts]
    .map(([text, { named, count }]) => ({
      text,
      count,
      share: names.length === 0 ? 0 : count / names.length,
      right: isRight(named),
    }))
    .sort((a, b) => b.count - a.count || a.text.localeCompare(b.text));
}
