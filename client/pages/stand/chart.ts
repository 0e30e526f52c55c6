import type { Answer } from '../../../shared/exercise/answer.ts';
import type { Correction, KeyNote, Verdict } from '../../../shared/exercise/verdict.ts';
import type { RevealView } from '../../../shared/protocol/views.ts';
import type { Fret, FretRange, Instrument, Place, StringNumber } from '../../../shared/theory/fretboard.ts';
import type { NoteNaming } from '../../../shared/theory/naming.ts';
import { octave } from '../../../shared/theory/pitch.ts';
import type { LegendEntry } from '../../components/legend.ts';
import { answerChart, type AnswerChart } from '../../fretboard/answer-chart.ts';
import { layerLegend } from '../../fretboard/layer-legend.ts';
import { keyNote, mutedNotes, namedNote } from '../../fretboard/key-notes.ts';
import type { NeckNote } from '../../fretboard/state.ts';

/** A chart on paper, and the words for the marks that stand in it. */
export interface Chart {
  readonly notes: readonly NeckNote[];
  readonly corrections: readonly Correction[];
  readonly legend: readonly LegendEntry[];
  /** Null: as much of the neck as the marks need. */
  readonly window: FretRange | null;
}

/** A chart that the teacher shows. */
export function shownChart(notes: readonly KeyNote[], silent: readonly StringNumber[]): Chart {
  return withLegend({ notes: [...notes.map(keyNote), ...mutedNotes(silent)], corrections: [] });
}

/** The teacher's own taps: places, and nothing of what they sound. */
export function tappedChart(instrument: Instrument, places: readonly Place[]): Chart {
  // The whole of the neck that may be tapped: it must not move with each tap.
  const { fretCount } = instrument;
  const high = places.some(({ fret }) => fret > octave) ? fretCount : Math.min(octave, fretCount);
  return {
    notes: places.map((place) => ({ place, look: 'filled' })),
    corrections: [],
    legend: [],
    window: { low: 1 as Fret, high: high as Fret },
  };
}

/** The chart of a reveal: of a place that was to be named its right name, else the answer held against the key. */
export function revealedChart(
  instrument: Instrument,
  { exercise, notes }: RevealView,
  answer: Answer,
  verdict: Verdict | null,
  naming: NoteNaming,
): Chart {
  return withLegend(
    exercise.kind === 'name'
      ? { notes: [namedNote(exercise, naming)], corrections: [] }
      : answerChart(instrument, exercise, notes, answer, verdict),
  );
}

function withLegend({ notes, corrections }: AnswerChart): Chart {
  const has = (wanted: NeckNote['look']) => notes.some((note) => note.look === wanted && !note.root);
  const hasSlip = has('slip');
  const hasRoot = notes.some((note) => note.root);
  const judged = hasSlip || notes.some((note) => note.look === 'expected');
  const entries: readonly (LegendEntry | false)[] = [
    hasRoot && { sign: 'lozenge', words: 'root' },
    ...layerLegend(notes),
    judged && has('filled') && { sign: 'disc', words: 'right' },
    hasSlip && { sign: 'slip', words: 'slip' },
    notes.some((note) => note.look === 'expected') && { sign: 'ring', words: 'where it is' },
    notes.some((note) => note.visits) && { sign: 'visits', words: 'your order' },
  ];
  return { notes, corrections, legend: entries.filter((entry) => entry !== false), window: null };
}
