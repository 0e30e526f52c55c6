import type { Fret, FretRange } from '../theory/fretboard.ts';
import { joinOf } from '../theory/joins.ts';
import type { Layers } from '../theory/neck-map.ts';
import { positionsFrom } from '../theory/positions.ts';
import type { ToneSetId } from '../theory/tone-sets.ts';
import { layerIds, type Chart, type MapChart } from './chart.ts';
import { checkExercise } from './check.ts';
import type { ScaleExercise } from './exercise.ts';
import { fretText } from './phrases.ts';
import { positionExercise, type RootAt } from './proposals.ts';

/** The map of a root, layer by layer: chord, then the pentatonic round it, then the scale round both. */
export function mapWalk(
  { instrument, root }: Omit<RootAt, 'place'>,
  layers: Layers,
  range: FretRange,
): readonly MapChart[] {
  return layerIds.map((upTo) => ({ kind: 'map', instrument: instrument.id, root, range, upTo, ...layers }));
}

export interface JoinWalk {
  /** The position towards the nut, both in one, the position towards the bridge. */
  readonly charts: readonly Chart[];
  /** "On string 2 slide from fret 5 to fret 8.", or that no slide is needed. */
  readonly words: string;
}

/** How the two positions join that share the root at this place; undefined where there are not two. */
export function joinWalk(at: RootAt, tones: ToneSetId): JoinWalk | undefined {
  const [first, second] = positionsFrom(at.instrument, at.root, tones, at.place);
  if (!first || !second) return undefined;
  const [one, other] = [first, second].map((position) => positionExercise(at, tones, position));
  if (!one || !other || !checkExercise(one).ok || !checkExercise(other).ok) return undefined;
  const frets = [...first.notes, ...second.notes].map(({ place }) => place.fret);
  const range = { low: Math.min(...frets) as Fret, high: Math.max(...frets) as Fret };
  const { slides } = joinOf(at.instrument, first, second);
  const slide = slides.find(({ string }) => string === at.place.string) ?? slides[0];
  const both: ScaleExercise = { ...one, strictness: 'range', range };
  return {
    charts: [one, both, other],
    words: slide
      ? `On string ${String(slide.string)} slide from ${fretText(slide.from)} to ${fretText(slide.to)}.`
      : 'One goes over into the other without a slide.',
  };
}
