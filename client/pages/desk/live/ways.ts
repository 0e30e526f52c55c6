import type { DeskAnswerView, DeskView } from '../../../../shared/protocol/views.ts';
import { settledAnswers } from './figures.ts';

/** How an answer came, in the word that stands beside it. */
export type CameBy = 'played' | 'MIDI' | 'tapped' | 'entered';

export function cameBy({ by, way }: Pick<DeskAnswerView, 'by' | 'way'>): CameBy {
  if (by === 'teacher') return 'entered';
  if (way === undefined) return 'tapped';
  return way === 'midi' ? 'MIDI' : 'played';
}

/** Whether it is worth saying: where the class may play, or somebody did. */
export function tellsWays({ settings, students }: DeskView): boolean {
  const mayPlay = settings.playing === 'turns' || settings.playing === 'on';
  return mayPlay || students.some(({ answer, late }) => (answer ?? late)?.way !== undefined);
}

/** "3 played, 1 by MIDI, 9 tapped"; empty where nobody played. */
export function waysText(view: DeskView): string {
  const ways = settledAnswers(view).map(cameBy);
  const count = (way: CameBy) => ways.filter((one) => one === way).length;
  if (count('played') + count('MIDI') === 0) return '';
  const parts = (['played', 'MIDI', 'tapped', 'entered'] as const).filter((way) => count(way) > 0);
  return parts.map((way) => `${String(count(way))} ${way === 'MIDI' ? 'by MIDI' : way}`).join(', ');
}
