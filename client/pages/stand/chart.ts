import type { Correction, KeyNote, Verdict } from '../../../shared/exercise/verdict.ts';
import {
  pitchClassAt,
  samePlace,
  type Fret,
  type FretRange,
  type Instrument,
  type Place,
} from '../../../shared/theory/fretboard.ts';
import type { LegendEntry } from '../../components/legend.ts';
import type { Degree } from '../../../shared/theory/interval.ts';
import { keyNote, slurs } from '../../fretboard/key-notes.ts';
import { holds, type NeckNote } from '../../fretboard/state.ts';

/** A chart on paper, and the words for the marks that stand in it. */
export interface Chart {
  readonly notes: readonly NeckNote[];
  readonly corrections: readonly Correction[];
  readonly legend: readonly LegendEntry[];
  /** Null: as much of the neck as the marks need. */
  readonly window: FretRange | null;
}

/** From this fret on the note names repeat. */
const octave = 12;

/** A chart that the teacher shows. */
export function shownChart(notes: readonly KeyNote[]): Chart {
  return withLegend(notes.map(keyNote), []);
}

/** The teacher's own taps: places, and nothing of what they sound. */
export function tappedChart(instrument: Instrument, places: readonly Place[]): Chart {
  // The whole of the neck that may be tapped: it must not move with each tap.
  const high = places.some(({ fret }) => fret > octave) ? instrument.fretCount : octave;
  return {
    notes: places.map((place) => ({ place, look: 'filled' })),
    corrections: [],
    legend: [],
    window: { low: 1 as Fret, high: high as Fret },
  };
}

/**
 * What a student gave, held against the key: what is right in print, a slip struck through, a slur from it to
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

  const right = verdict.marks.filter((mark) => mark.right).map((mark) => mark.place);
  const slips = verdict.marks.filter((mark) => !mark.right).map((mark) => mark.place);
  const corrections = verdict.kind === 'slip' ? verdict.corrections : [];
  const wanted = [...corrections.map(({ to }) => to), ...verdict.missing].filter(
    (place, at, all) => !holds(right, place) && all.findIndex((other) => samePlace(other, place)) === at,
  );
  const notes = [
    ...right.map((place): NeckNote => ({ ...inPrint(place), finger: undefined })),
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
