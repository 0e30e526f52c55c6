import { chartNotes, chartWordings, type Chart } from '../../shared/exercise/chart.ts';
import { placeText } from '../../shared/exercise/phrases.ts';
import { silentIn } from '../../shared/exercise/silent.ts';
import { namedText, rightName } from '../../shared/exercise/name-words.ts';
import type { KeyNote } from '../../shared/exercise/verdict.ts';
import type { Degree } from '../../shared/theory/interval.ts';
import { intervalName } from '../../shared/theory/interval-names.ts';
import { stringNumbers } from '../../shared/theory/fretboard.ts';
import type { NoteNaming } from '../../shared/theory/naming.ts';
import { instrumentOf } from './chart-marks.ts';

/**
 * The chart for whoever hears it, from the lowest string on: "string 2, fret 7, root, finger 2", and a string that
 * holds several notes in one: "string 6: fret 4, major seventh; fret 5, root".
 */
export function chartInWords(
  chart: Chart,
  naming: NoteNaming,
  key: readonly KeyNote[] = chartNotes(chart),
): readonly string[] {
  if (chart.kind === 'name') {
    const named = rightName(chart);
    const words = named.kind === 'degree' ? degreeWords(named.degree) : namedText(named, 'note', naming);
    return [`${placeText(chart.place)}, ${words}`];
  }
  const instrument = instrumentOf(chart);
  const silent = chart.kind === 'map' ? [] : silentIn(chart, key);
  return stringNumbers(instrument)
    .toReversed()
    .flatMap((string) => {
      const notes = key
        .filter(({ place }) => place.string === string)
        .toSorted((a, b) => a.place.fret - b.place.fret)
        .map(noteWords);
      const named = `string ${String(string)}`;
      if (notes.length === 0) return silent.includes(string) ? [`${named}, silent`] : [];
      return [notes.length === 1 ? `${named}, ${notes.join('')}` : `${named}: ${notes.join('; ')}`];
    });
}

function degreeWords(degree: Degree): string {
  return degree === '1' ? 'root' : intervalName(degree);
}

function noteWords({ place: { fret }, degree, finger, optional, layer }: KeyNote): string {
  return [
    fret === 0 ? 'open' : `fret ${String(fret)}`,
    degreeWords(degree),
    ...(finger === undefined ? [] : [`finger ${String(finger)}`]),
    ...(optional ? ['may stay silent'] : []),
    ...(layer === undefined ? [] : [`of the ${layer}`]),
  ].join(', ');
}

/** The title over the chart: "E minor". */
export function chartTitle(chart: Chart, naming: NoteNaming): string {
  return chartWordings(chart)[naming].title;
}
