import type { Exercise } from '../../../../shared/exercise/exercise.ts';
import { likelySlips, separatingExercise, type LikelySlip } from '../../../../shared/exercise/likely.ts';
import { list, placeText, uncapital } from '../../../../shared/exercise/phrases.ts';
import { instrumentOf } from '../../../../shared/exercise/roots.ts';
import { slipName } from '../../../../shared/exercise/slip-names.ts';
import { astrayIn } from './likely-text.ts';

/** A likely slip by its name, and where it lands; "or" between the answers that it leads to. */
export interface SlipLanding {
  readonly name: string;
  readonly where: string;
}

/** Every likely slip, those that go least astray first. */
export function slipLandings(exercise: Exercise): readonly SlipLanding[] {
  const slips = likelySlips(exercise).map((slip) => ({ slip, astray: astrayIn(slip, exercise) }));
  const landings = new Map<string, string[]>();
  for (const { slip, astray } of slips.sort((a, b) => a.astray.length - b.astray.length)) {
    const name = slipName(slip.cause, instrumentOf(exercise));
    const where = astray.map(placeText).join('; ');
    landings.set(name, [...(landings.get(name) ?? []), where === '' ? 'something is left out' : where]);
  }
  return [...landings].map(([name, where]) => ({ name, where: [...new Set(where)].join(' or ') }));
}

/** Two likely slips or more that give the same answer, in a sentence; and what to ask so that they part. */
export interface Meeting {
  readonly says: string;
  readonly instead: Exercise | undefined;
}

/** `meetingsIn(find('F'))`: where likely slips can't be told apart. */
export function meetingsIn(exercise: Exercise): readonly Meeting[] {
  const landings = new Map<string, LikelySlip[]>();
  for (const slip of likelySlips(exercise)) {
    const key = slip.places.map(placeText).sort().join();
    landings.set(key, [...(landings.get(key) ?? []), slip]);
  }
  return [...landings.values()].flatMap((slips) => {
    const [one, other] = slips;
    if (!one || !other) return [];
    const names = slips.map(({ cause }, index) => {
      const name = slipName(cause, instrumentOf(exercise));
      return `“${index === 0 ? name : uncapital(name)}”`;
    });
    const astray = astrayIn(one, exercise).map(placeText).join('; ');
    const where = astray === '' ? 'give the same answer' : `land on ${astray}`;
    return {
      says: `${list(names)} ${slips.length === 2 ? 'both' : 'all'} ${where}: such an answer does not tell which it was.`,
      instead: separatingExercise(exercise, [one.cause, other.cause]),
    };
  });
}
