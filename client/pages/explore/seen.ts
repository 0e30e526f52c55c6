import { chartNotes, type Chart } from '../../../shared/exercise/chart.ts';
import { proposalsFrom, type RootAt } from '../../../shared/exercise/proposals.ts';
import { uncapital } from '../../../shared/exercise/phrases.ts';
import { joinWalk, mapWalk } from '../../../shared/exercise/walks.ts';
import type { KeyNote } from '../../../shared/exercise/verdict.ts';
import type { Fret, FretRange, Instrument, Place } from '../../../shared/theory/fretboard.ts';
import type { Lies } from '../../../shared/theory/lies.ts';
import { formatName, type NoteNaming } from '../../../shared/theory/naming.ts';
import { noteOnDegree } from '../../../shared/theory/interval.ts';
import { everyString } from '../../../shared/theory/root-places.ts';
import { chartMarks } from '../../charts/chart-marks.ts';
import { placeName, type NeckNote } from '../../fretboard/state.ts';
import { maps, rootAt, type Ideas } from './ideas.ts';

/** One chart round a root, and its name in words. */
export interface Seen {
  readonly name: string;
  readonly lies: Lies;
  readonly chart: Chart;
}

/** What stands inside the marks. */
export type Labels = 'degrees' | 'notes';

/** What is looked for, from the note at this place. */
export function from(instrument: Instrument, place: Place, ideas: Ideas): RootAt {
  return { instrument, place, root: rootAt(instrument, place, ideas) };
}

let latest: { readonly key: string; readonly seen: readonly Seen[] } | null = null;

/**
 * All there is, from towards the nut to towards the bridge; a map from its chord out to its scale. The latest is
 * remembered: a screen asks for it with every tap.
 */
export function seenFrom(at: RootAt, ideas: Ideas): readonly Seen[] {
  const { instrument, root, place } = at;
  const key = JSON.stringify([instrument.id, root, place, ideas.kind, ideas[ideas.kind]]);
  if (latest?.key !== key) latest = { key, seen: findSeen(at, ideas) };
  return latest.seen;
}

function findSeen(at: RootAt, ideas: Ideas): readonly Seen[] {
  if (ideas.kind === 'map')
    return mapWalk(at, maps[ideas.map], mapRange(at)).map((chart, index) => ({
      name: ['Chord', 'Chord and pentatonic', 'Chord, pentatonic and scale'][index] ?? '',
      lies: 'around',
      chart,
    }));
  const wish =
    ideas.kind === 'chord'
      ? ({ kind: 'chord', quality: ideas.chord } as const)
      : ({ kind: 'scale', tones: ideas[ideas.kind] } as const);
  return proposalsFrom(at, wish).map(({ exercise, ...named }) => ({ ...named, chart: exercise }));
}

/** Frets that a map shows to either side of its root. */
const mapReach = 4;

function mapRange({ instrument, place: { fret } }: RootAt): FretRange {
  const low = Math.max(0, Math.min(fret - mapReach, instrument.fretCount - 2 * mapReach));
  return { low: low as Fret, high: Math.min(instrument.fretCount, low + 2 * mapReach) as Fret };
}

/** The hand goes along a string: no position. */
function isAlong({ chart }: Seen): boolean {
  return chart.kind === 'scale' && chart.oneString === true;
}

/** Which of them comes first: one round the root, else the nearest towards the bridge; a map whole. */
export function firstOf(all: readonly Seen[]): number {
  if (all[0]?.chart.kind === 'map') return all.length - 1;
  const [around, bridge] = (['around', 'towards-bridge'] as const).map((way) =>
    all.findIndex((seen) => seen.lies === way && !isAlong(seen)),
  );
  return Math.max(0, around !== undefined && around >= 0 ? around : (bridge ?? 0));
}

/** The same idea among others: by its name, else lying the same way, else the first. */
export function likeIn(all: readonly Seen[], seen: Seen | undefined): number {
  const same = all.findIndex(({ name }) => name === seen?.name);
  if (same >= 0) return same;
  const lying = all.findIndex(({ lies }) => lies === seen?.lies);
  return lying >= 0 ? lying : firstOf(all);
}

/** The same note on the next string, from the last one back to string 1, as near as it comes. */
export function onNextString({ instrument, root, place }: RootAt): Place {
  const strings = everyString(instrument, root);
  const places = strings[place.string % strings.length] ?? [];
  const away = ({ fret }: Place) => Math.abs(fret - place.fret);
  return places.toSorted((a, b) => away(a) - away(b))[0] ?? place;
}

/** How one position goes over into the next; empty where the chart is none, or has no neighbour. */
export function joinWords(at: RootAt, seen: Seen): string {
  const { chart } = seen;
  if (chart.kind !== 'scale' || chart.perString || isAlong(seen)) return '';
  const words = joinWalk(at, chart.scale)?.words;
  return words === undefined ? '' : `Into the next position: ${uncapital(words)}`;
}

/** The marks of the chart, with degrees or note names inside. */
export function marksOf({ chart }: Seen, labels: Labels, naming: NoteNaming): readonly NeckNote[] {
  return chartMarks(chart, { marks: labels === 'notes' ? 'names' : 'degrees', naming });
}

/** "string 2, fret 5, root, finger 1; …": the chart for whoever hears it, from the lowest string on. */
export function spoken({ root }: RootAt, { chart }: Seen, naming: NoteNaming): string {
  return chartNotes(chart)
    .map((note) => noteWords(note, noteOnDegree(root, note.degree), naming))
    .join('; ');
}

function noteWords(
  { place, degree, finger, optional, layer }: KeyNote,
  name: ReturnType<typeof noteOnDegree>,
  naming: NoteNaming,
): string {
  const tone = degree === '1' ? 'root' : degree.replaceAll('b', 'flat ').replaceAll('#', 'sharp ');
  return [
    placeName(place),
    tone,
    ...(name ? [formatName(name, naming)] : []),
    ...(finger === undefined ? [] : [`finger ${String(finger)}`]),
    ...(optional ? ['may stay silent'] : []),
    ...(layer === undefined ? [] : [`of the ${layer}`]),
  ].join(', ');
}
