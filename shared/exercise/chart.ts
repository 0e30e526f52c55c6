import { success, failure, type Result } from '../lib/result.ts';
import { instrumentById, type FretRange, type InstrumentId } from '../theory/fretboard.ts';
import { noteOnDegree } from '../theory/interval.ts';
import { neckMap, type Layer, type Layers } from '../theory/neck-map.ts';
import { toneDegrees } from '../theory/tone-sets.ts';
import type { NoteName } from '../theory/pitch.ts';
import { scaleNames } from '../theory/tables/scale-names.ts';
import { checkExercise } from './check.ts';
import type { Exercise } from './exercise.ts';
import { answerKey } from './key.ts';
import { capital, rangeText } from './phrases.ts';
import type { KeyNote } from './verdict.ts';
import { chordName, inEveryNaming, scaleName, subjectOf, wordingOf, type Wordings } from './wording.ts';

/** All over one root at once: chord tones inside pentatonic inside scale, as far out as `upTo`. */
export interface MapChart extends Layers {
  readonly kind: 'map';
  readonly instrument: InstrumentId;
  readonly root: NoteName;
  readonly range: FretRange;
  readonly upTo: Layer;
}

/** What can be shown: the key of an exercise, or a map. */
export type Chart = Exercise | MapChart;

/** From the innermost out. */
export const layerIds: readonly Layer[] = ['chord', 'pentatonic', 'scale'];

/** Whether the chart can be drawn, or why not in a sentence for the teacher. */
export function checkChart(chart: Chart): Result<Chart, string> {
  if (chart.kind !== 'map') return checkExercise(chart);
  const instrument = instrumentById(chart.instrument);
  if (!instrument) return failure('This instrument is not known here.');
  const { range, root } = chart;
  if (range.low > range.high || range.high > instrument.fretCount)
    return failure(`The neck has frets 0 to ${String(instrument.fretCount)}.`);
  const degrees = [`arpeggio-${chart.chord}` as const, chart.pentatonic, chart.scale].flatMap(toneDegrees);
  return degrees.every((degree) => noteOnDegree(root, degree))
    ? success(chart)
    : failure('Some of its notes would need a triple accidental. Take another name for the root.');
}

/** The notes of the chart, each with its degree, and with its layer on a map. */
export function chartNotes(chart: Chart): readonly KeyNote[] {
  if (chart.kind !== 'map') return answerKey(chart);
  const instrument = instrumentById(chart.instrument);
  if (!instrument) return [];
  const shown = layerIds.slice(0, layerIds.indexOf(chart.upTo) + 1);
  return neckMap(instrument, chart.root, chart, chart.range)
    .filter(({ layer }) => shown.includes(layer))
    .map(({ layer, ...note }) => (layer === 'chord' ? note : { ...note, layer }));
}

/** The words over the chart, without a question: "E minor" where `wordingOf` says "Build E minor". */
export function chartWordings(chart: Chart): Wordings {
  return inEveryNaming((naming) => {
    if (chart.kind !== 'map')
      return { title: capital(subjectOf(chart, naming)), detail: wordingOf(chart, naming).detail };
    const { root, chord, pentatonic, scale, range, upTo } = chart;
    const within = [chordName(root, chord, naming), scaleNames[pentatonic], scaleNames[scale]].slice(
      0,
      layerIds.indexOf(upTo) + 1,
    );
    return {
      title: upTo === 'chord' ? chordName(root, chord, naming) : scaleName(root, chart[upTo], naming),
      detail: `${capital(within.join(' inside the '))}, on every string, ${rangeText(range)}.`,
    };
  });
}
