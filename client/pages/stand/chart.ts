import type { Answer } from '../../../shared/exercise/answer.ts';
import type { Exercise } from '../../../shared/exercise/exercise.ts';
import type { Correction, KeyNote, Verdict } from '../../../shared/exercise/verdict.ts';
import type { RevealView } from '../../../shared/protocol/views.ts';
import {
  distinct,
  pitchClassAt,
  samePlace,
  type Fret,
  type FretRange,
  type Instrument,
  type Place,
} from '../../../shared/theory/fretboard.ts';
import type { LegendEntry } from '../../components/legend.ts';
import type { Degree } from '../../../shared/theory/interval.ts';
import type { NoteNaming } from '../../../shared/theory/naming.ts';
import { octave } from '../../../shared/theory/pitch.ts';
import { keyNote, namedNote, slurs } from '../../fretboard/key-notes.ts';
import { holds, type NeckNote } from '../../fretboard/state.ts';

/** A chart on paper, and the words for the marks that stand in it. */
export interface Chart {
  readonly notes: readonly NeckNote[];
  readonly corrections: readonly Correction[];
  readonly legend: readonly LegendEntry[];
  /** Null: as much of the neck as the marks need. */
  readonly window: FretRange | null;
}

/** A chart that the teacher shows. */
export function shownChart(notes: readonly KeyNote[]): Chart {
  return withLegend(notes.map(keyNote), []);
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
  if (exercise.kind === 'name') return withLegend([namedNote(exercise, naming)], []);
  const chart = answerChart(instrument, notes, distinct(answer.places), verdict);
  return { ...chart, corrections: [...chart.corrections, ...rootSlur(exercise, notes, answer, verdict)] };
}

/** From the note that was marked as the root to the root, where nothing else went otherwise. */
function rootSlur(
  exercise: Exercise,
  key: readonly KeyNote[],
  { root }: Answer,
  verdict: Verdict | null,
): readonly Correction[] {
  const isAsked = (exercise.kind === 'build' || exercise.kind === 'scale') && exercise.marksRoot === true;
  if (!isAsked || !root || verdict?.kind !== 'slip' || verdict.marks.some(({ right }) => !right)) return [];
  const right = key.find(({ place, degree }) => degree === '1' && place.string === exercise.rootString);
  return right && !samePlace(right.place, root) ? [{ from: root, to: right.place }] : [];
}

/**
 * The places that a student gave, held against the key: what is right in print, a slip struck through, a slur from it to
 * where it should be. Without an answer, the key alone.
 */
export function answerChart(
  instrument: Instrument,
  key: readonly KeyNote[],
  given: readonly Place[],
  verdict: Verdict | null,
): Chart {
  if (verdict === null || given.length === 0) return shownChart(key);
  const degreeOf = degreesOf(instrument, key);
  const inPrint = (place: Place): NeckNote => {
    const degree = degreeOf(place);
    const finger = key.find((note) => samePlace(note.place, place))?.finger;
    return degree === undefined ? { place, look: 'filled' } : { ...keyNote({ place, degree }), finger };
  };
  if (verdict.kind === 'right') return withLegend(given.map(inPrint), []);

  const judged = (right: boolean) =>
    distinct(verdict.marks.filter((mark) => mark.right === right).map((mark) => mark.place));
  const right = judged(true);
  const slips = judged(false).filter((place) => !holds(right, place));
  const corrections = verdict.kind === 'slip' ? verdict.corrections : [];
  const wanted = distinct([...corrections.map(({ to }) => to), ...verdict.missing]).filter(
    (place) => !holds(right, place),
  );
  // Where every note is right the slip lies beside them, perhaps in the finger; else fingers would only be in the way.
  const astray = slips.length > 0 || wanted.length > 0;
  const notes = [
    ...right.map((place): NeckNote => (astray ? { ...inPrint(place), finger: undefined } : inPrint(place))),
    ...wanted.map((place): NeckNote => ({ ...inPrint(place), finger: undefined, look: 'expected' })),
    ...slips.filter((place) => !holds(wanted, place)).map((place): NeckNote => ({ place, look: 'slip' })),
  ];
  return withLegend(notes, slurs(corrections, key));
}

/** A right place need not be in the key (another octave, another voicing), but its tone is. */
function degreesOf(instrument: Instrument, key: readonly KeyNote[]): (place: Place) => Degree | undefined {
  const degrees = new Map<number, Degree>(
    key.map(({ place, degree }) => [pitchClassAt(instrument, place), degree]),
  );
  return (place) => degrees.get(pitchClassAt(instrument, place));
}

function withLegend(notes: readonly NeckNote[], corrections: readonly Correction[]): Chart {
  const has = (wanted: NeckNote['look']) => notes.some((note) => note.look === wanted && !note.root);
  const hasSlip = has('slip');
  const hasRoot = notes.some((note) => note.root);
  const judged = hasSlip || notes.some((note) => note.look === 'expected');
  const entries: readonly (LegendEntry | false)[] = [
    hasRoot && { sign: 'lozenge', words: 'root' },
    judged && has('filled') && { sign: 'disc', words: 'right' },
    hasSlip && { sign: 'slip', words: 'slip' },
    notes.some((note) => note.look === 'expected') && { sign: 'ring', words: 'where it is' },
  ];
  return { notes, corrections, legend: entries.filter((entry) => entry !== false), window: null };
}
