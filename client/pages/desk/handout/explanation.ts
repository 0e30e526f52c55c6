import { chartNotes, chartWordings, type Chart } from '../../../../shared/exercise/chart.ts';
import type { BuildExercise, ScaleExercise } from '../../../../shared/exercise/exercise.ts';
import { namedText, rightName } from '../../../../shared/exercise/name-words.ts';
import { capital, list, numberText, placeText, rangeText } from '../../../../shared/exercise/phrases.ts';
import { familyWords, formWords } from '../../../../shared/exercise/wording.ts';
import { formatName, type NoteNaming } from '../../../../shared/theory/naming.ts';
import { byString } from './places-text.ts';

/** Places that are told one by one. */
const mostTold = 4;

/** One sentence for whoever learns from the chart: "C form: root on string 2, fret 10, finger 3." */
export function explanationOf(chart: Chart, naming: NoteNaming): string {
  switch (chart.kind) {
    case 'map':
      return chartWordings(chart)[naming].detail;
    case 'name': {
      const of = chart.wanted === 'note' ? '' : ` above ${formatName(chart.root, naming)}`;
      return `${capital(placeText(chart.place))}: ${namedText(rightName(chart), chart.wanted, naming)}${of}.`;
    }
    case 'find': {
      const places = chartNotes(chart).map(({ place }) => place);
      const root = formatName(chart.root, naming);
      if (places.length <= mostTold) return `${root}: ${byString(places)}.`;
      return `Every ${root} ${chart.range ? `in ${rangeText(chart.range)}` : 'on the neck'}.`;
    }
    case 'build':
      return `${shapeText(chart)}: ${rootText(chart)}.`;
    case 'scale':
      return `${patternText(chart)}: ${rootText(chart)}.`;
  }
}

/** "root on string 2, fret 10, finger 3" */
function rootText(chart: BuildExercise | ScaleExercise): string {
  const roots = chartNotes(chart).filter(({ degree }) => degree === '1');
  const root = roots.find(({ place }) => place.string === chart.rootString) ?? roots[0];
  if (!root) return 'no root';
  const finger = root.finger ? `, finger ${String(root.finger)}` : '';
  return `root on ${placeText(root.place)}${finger}`;
}

function shapeText({ voicing }: BuildExercise): string {
  switch (voicing.kind) {
    case 'form':
      return capital(formWords[voicing.form]);
    case 'family':
      return `${capital(familyWords[voicing.family])} on strings ${list(voicing.strings.toSorted((a, b) => b - a))}`;
    case 'strings':
      return `On strings ${list(voicing.strings.toSorted((a, b) => b - a))}`;
    case 'any':
      return 'One of many shapes';
  }
}

function patternText({ perString, oneString, rootString, strictness, range }: ScaleExercise): string {
  if (perString) return `${capital(numberText(perString.notes))} notes on every string`;
  if (oneString) return `Along string ${String(rootString)}`;
  return strictness === 'range' && range ? `Every note in ${rangeText(range)}` : 'Under one hand';
}
