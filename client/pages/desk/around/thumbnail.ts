import { html, type TemplateResult } from 'lit';
import type { Exercise } from '../../../../shared/exercise/exercise.ts';
import type { KeyNote } from '../../../../shared/exercise/verdict.ts';
import type { NoteNaming } from '../../../../shared/theory/naming.ts';
import '../../../charts/chart.ts';
import { chartMarks, chartView } from '../../../charts/chart-marks.ts';

/**
 * A chart whose notes are known already: working out the key of every card again would hold the page up. Its place is
 * kept until it is drawn.
 */
export function thumbnail(
  exercise: Exercise,
  key: readonly KeyNote[],
  name: string,
  naming: NoteNaming,
  drawn: boolean,
): TemplateResult {
  const view = chartView(chartMarks(exercise, { marks: 'degrees', naming }, key));
  if (!drawn) return html`<div class=${view}></div>`;
  return html`<rootcall-chart
    class=${view}
    .chart=${exercise}
    .key=${key}
    .view=${view}
    .naming=${naming}
    .label=${`Chart: ${name}`}
  ></rootcall-chart>`;
}
