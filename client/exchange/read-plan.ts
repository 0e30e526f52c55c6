import { failure, success, type Result } from '../../shared/lib/result.ts';
import { plainText } from '../../shared/protocol/plain-text.ts';
import { readMusicXml, type Reader } from './musicxml-in.ts';
import { readPlanFile, type ReadPlan } from './plan-file.ts';

/** A plan that was read, and what of its file can't be taken. */
export interface FoundPlan extends Omit<ReadPlan, 'refused'> {
  readonly refused: readonly { readonly what: string; readonly reason: string }[];
}

const longestTitle = 80;

/** Reads a plan's file or a MusicXML score, whichever it is. `fileName` is the title of a score without one. */
export function readPlan(text: string, fileName: string, reader: Reader): Result<FoundPlan, string> {
  if (!text.trimStart().startsWith('<')) {
    const read = readPlanFile(text);
    if (!read.ok) return read;
    const refused = read.value.refused.map(({ number, reason }) => ({
      what: `Exercise ${String(number)}`,
      reason,
    }));
    return success({ ...read.value, refused });
  }
  const score = readMusicXml(text, reader);
  if (!score.ok) return score;
  const { title, charts } = score.value;
  const refused = score.value.refused.map(({ measure, reason }) => ({
    what: measure.charAt(0).toUpperCase() + measure.slice(1),
    reason,
  }));
  if (charts.length === 0 && refused.length === 0) return failure('There is no chart in this score.');
  const exercises = charts.map(({ exercise }) => {
    return { part: 'new', exercise, harder: [], seconds: null } as const;
  });
  return success({ title: titleOf(title, fileName), aim: '', points: [], exercises, refused });
}

function titleOf(ofScore: string, fileName: string): string {
  const ofFile = plainText(fileName.slice(0, 200).replace(/\.\w+$/, ''));
  return [ofScore, ofFile].find((title) => title !== '' && title.length <= longestTitle) ?? 'Charts';
}
