import { perObject } from '../lib/per-object.ts';
import { neededDegrees } from '../theory/chord-rule.ts';
import type { Place } from '../theory/fretboard.ts';
import type { Degree } from '../theory/interval.ts';
import { patternAt } from '../theory/patterns.ts';
import { positionAt, scalePlaces } from '../theory/position.ts';
import { shapesFrom } from '../theory/shapes.ts';
import { formRow, shapeAt, type ShapeNote } from '../theory/shape.ts';
import { toneDegrees } from '../theory/tone-sets.ts';
import { hasGivenShape, type BuildExercise, type Exercise, type ScaleExercise } from './exercise.ts';
import { acceptedRoots, toneAt, instrumentOf, isInRange, rootsOn } from './roots.ts';
import { voicingTargets } from './voicings.ts';

/** One right answer as a chart would show it, and the other places that may stand in it. */
export interface Target {
  readonly notes: readonly ShapeNote[];
  readonly accepted: readonly Place[];
}

/** The right answers that a chart can show, lowest first; what `judge` accepts besides is said there. */
export const targetsOf: (exercise: Exercise) => readonly Target[] = perObject((exercise) => {
  switch (exercise.kind) {
    case 'find':
      return findTargets(acceptedRoots(exercise), exercise.wanted === 'every');
    case 'name':
      return nameTarget(exercise.place, toneAt(exercise, exercise.place));
    case 'build':
      return buildTargets(exercise);
    case 'scale':
      return scaleTargets(exercise);
  }
});

function findTargets(roots: readonly Place[], every: boolean): readonly Target[] {
  const notes = roots.map((spot) => ({ place: spot, degree: '1', finger: 0, optional: false }));
  const targets = notes.map((note) => ({ notes: [note], accepted: [note.place] }));
  return every && notes.length > 0 ? [{ notes, accepted: roots }] : targets;
}

function nameTarget(spot: Place, degree: string | undefined): readonly Target[] {
  if (degree === undefined) return [];
  return [{ notes: [{ place: spot, degree, finger: 0, optional: false }], accepted: [spot] }];
}

function buildTargets(exercise: BuildExercise): readonly Target[] {
  switch (exercise.voicing.kind) {
    case 'form':
      return formTargets(exercise);
    case 'family':
      return familyTargets(exercise, exercise.voicing);
    case 'strings':
    case 'any':
      return voicingTargets(exercise);
  }
}

/** The shapes of the family on exactly these strings, with a root that may lie there. */
function familyTargets(
  exercise: BuildExercise,
  { family, strings }: BuildExercise['voicing'] & { kind: 'family' },
): readonly Target[] {
  const wholeInRange = exercise.strictness === 'range' ? exercise.range : null;
  return acceptedRoots(exercise)
    .flatMap((root) => shapesFrom(instrumentOf(exercise), exercise, root, [family]))
    .filter(
      ({ notes }) =>
        notes.length === strings.length &&
        notes.every(({ place }) => strings.includes(place.string) && isInRange(wholeInRange, place)),
    )
    .map(({ notes }) => ({ notes, accepted: notes.map((note) => note.place) }));
}

function formTargets(exercise: BuildExercise): readonly Target[] {
  const { voicing, quality, root, rootString, strictness, range } = exercise;
  const row = voicing.kind === 'form' ? formRow(voicing.form, quality, rootString) : undefined;
  if (!row) return [];
  const wholeInRange = strictness === 'range' ? range : null;
  return rootsOn(exercise, rootString)
    .filter((spot) => strictness === 'range' || isInRange(range, spot))
    .flatMap((spot) => {
      const notes = shapeAt(instrumentOf(exercise), row, root, spot);
      if (!notes?.every((note) => isInRange(wholeInRange, note.place))) return [];
      // The root that is asked for sounds, and so does everything of a full form.
      const isFull = voicing.kind === 'form' && voicing.full;
      const asked = notes.map((note) =>
        isFull || note.place.string === rootString ? { ...note, optional: false } : note,
      );
      return [{ notes: asked, accepted: notes.map((note) => note.place) }];
    });
}

/** The tones that a right answer always has; a given shape may lack what the chord else needs, as the C form of a 6 its fifth. */
export function tonesNeeded(exercise: BuildExercise): readonly Degree[] {
  const needed = neededDegrees(exercise.quality);
  if (!hasGivenShape(exercise)) return needed;
  const given = targetsOf(exercise).flatMap(({ notes }) => notes.map((note) => note.degree));
  return needed.filter((degree) => given.includes(degree));
}

function scaleTargets(exercise: ScaleExercise): readonly Target[] {
  const { root, rootString, scale, rootFinger, perString, oneString, strictness, range, coverage } = exercise;
  const instrument = instrumentOf(exercise);
  // Where strings lie far apart a position may lack a tone.
  const needed = coverage === 'every-tone' ? toneDegrees(scale) : [];
  const isWhole = (notes: readonly ShapeNote[]) =>
    needed.every((degree) => notes.some((note) => note.degree === degree));
  if (perString)
    return acceptedRoots(exercise).flatMap(
      (spot) => patternAt(instrument, root, scale, spot, perString) ?? [],
    );
  if (strictness === 'range' && range) {
    const notes = scalePlaces(instrument, root, scale, range).filter(
      ({ place }) => !oneString || place.string === rootString,
    );
    return notes.length > 0 && isWhole(notes) ? [{ notes, accepted: notes.map((note) => note.place) }] : [];
  }
  const fingers = coverage === 'every-pitch' ? [rootFinger] : [rootFinger, 1, 2, 4];
  return acceptedRoots(exercise).flatMap((spot) => {
    for (const finger of fingers) {
      const position = positionAt(instrument, root, scale, spot, finger);
      if (position && isWhole(position.notes)) return [position];
    }
    return [];
  });
}
