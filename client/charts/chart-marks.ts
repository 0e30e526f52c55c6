import { chartNotes, type Chart } from '../../shared/exercise/chart.ts';
import type { KeyNote } from '../../shared/exercise/verdict.ts';
import { instrumentById, standardGuitar, type Instrument } from '../../shared/theory/fretboard.ts';
import { noteOnDegree } from '../../shared/theory/interval.ts';
import { degreeSign, formatName, type NoteNaming } from '../../shared/theory/naming.ts';
import type { NoteName } from '../../shared/theory/pitch.ts';
import { fingersToShow, keyNote, namedNote, silentStrings } from '../fretboard/key-notes.ts';
import { notedPlaces, type NeckNote, type NeckView } from '../fretboard/state.ts';

/** What stands inside the marks: the degree above the root, the note's name, the finger, or nothing. */
export type Marks = 'degrees' | 'names' | 'fingers' | 'none';

export interface MarkSettings {
  readonly marks: Marks;
  readonly naming: NoteNaming;
}

/** `auto`: upright as a chord chart, unless it would be too long for that. */
export type ChartView = NeckView | 'auto';

/** How charts are drawn, on the screen, in print and in a file. */
export interface ChartSettings extends MarkSettings {
  readonly view: ChartView;
  readonly leftHanded: boolean;
  /** With a line of tablature below, where the chart can be played from one. */
  readonly tab: boolean;
}

export const usualSettings: ChartSettings = {
  view: 'auto',
  marks: 'degrees',
  naming: 'english',
  leftHanded: false,
  tab: false,
};

export function instrumentOf({ instrument }: Chart): Instrument {
  return instrumentById(instrument) ?? standardGuitar;
}

/** All that a chart shows. `key` is its notes, where they are known already: they take a while to work out. */
export function chartMarks(
  chart: Chart,
  { marks, naming }: MarkSettings,
  key: readonly KeyNote[] = chartNotes(chart),
): readonly NeckNote[] {
  const isNamed = marks === 'degrees' || marks === 'names';
  if (chart.kind === 'name') {
    const note = namedNote(chart, naming);
    return [isNamed ? note : { ...note, label: undefined }];
  }
  const mark = (note: KeyNote): NeckNote => ({
    ...keyNote(note),
    label: labelOf(note, chart.root, marks, naming),
    // Inside the mark it needs no row below.
    ...(isNamed ? {} : { finger: undefined }),
  });
  if (chart.kind === 'map') return key.map(mark);
  const fingered = isNamed ? fingersToShow(chart, key) : key;
  return [...fingered.map(mark), ...silentStrings(chart, key)];
}

function labelOf(
  { degree, finger }: KeyNote,
  root: NoteName,
  marks: Marks,
  naming: NoteNaming,
): string | undefined {
  switch (marks) {
    case 'degrees':
      return degreeSign(degree);
    case 'names': {
      const name = noteOnDegree(root, degree);
      return name && drawable(formatName(name, naming));
    }
    case 'fingers':
      return finger === undefined ? undefined : String(finger);
    case 'none':
      return undefined;
  }
}

/** No face of ours holds the double signs. */
export function drawable(text: string): string {
  return text.replaceAll('𝄫', '♭♭').replaceAll('𝄪', '×');
}

/** Frets between the outermost marks of the longest chart that stands upright. */
const longestUpright = 7;

/** Upright as a chord chart, unless it would be too long for that. */
export function chartView(notes: readonly NeckNote[]): NeckView {
  const frets = notedPlaces(notes).map(({ fret }) => fret);
  return Math.max(...frets, 0) - Math.min(...frets, 36) > longestUpright ? 'lying' : 'upright';
}
