import type { BuildExercise } from '../../../shared/exercise/exercise.ts';
import type { HeardTone } from '../../../shared/exercise/heard.ts';
import { judge } from '../../../shared/exercise/judge.ts';
import type { Verdict } from '../../../shared/exercise/verdict.ts';
import { known } from '../../../shared/lib/assert.ts';
import { midiAt, standardGuitar, type StringNumber } from '../../../shared/theory/fretboard.ts';
import { parseNoteName, pitchClass, type NoteName } from '../../../shared/theory/pitch.ts';
import { voicingsOf } from '../../../shared/theory/playable.ts';
import { everyString } from '../../../shared/theory/root-places.ts';
import { shapesFrom } from '../../../shared/theory/shapes.ts';
import { chordTable, type ChordQuality } from '../../../shared/theory/tables/chords.ts';
import { build } from '../../support/exercises.ts';
import type { Random } from '../../support/random.ts';

/** A chord as a hand holds it. */
export interface PlayedChord {
  readonly root: NoteName;
  readonly quality: ChordQuality;
  /** What the strings sound, lowest string first, and which of them are the third. */
  readonly pitches: readonly number[];
  readonly thirds: readonly boolean[];
}

export const qualities = Object.keys(chordTable) as ChordQuality[];
const roots = ['C', 'C#', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'Ab', 'A', 'Bb', 'B'].map((name) =>
  known(parseNoteName(name), name),
);
/** Above it the guitars were not recorded, and few chords are played. */
const highest = 79;

/** Any quality on any root from any string, in a form, a way of stacking, or what else a hand can hold there. */
export function someChord(random: Random): PlayedChord {
  for (;;) {
    const quality = random.pick(qualities);
    const root = random.pick(roots);
    const places = everyString(standardGuitar, root)[random.below(6)] ?? [];
    const rootPlace = random.pick(places.filter(({ fret }) => fret < 15));
    const shapes = random.chance(0.5)
      ? shapesFrom(standardGuitar, { root, quality }, rootPlace)
      : voicingsOf(standardGuitar, { root, quality }, { rootPlace, most: 24 });
    const notes = shapes[random.below(shapes.length)]?.notes;
    const pitches = notes?.map((note) => midiAt(standardGuitar, note.place)) ?? [];
    if (!notes || pitches.some((pitch) => pitch > highest)) continue;
    return { root, quality, pitches, thirds: notes.map(({ degree }) => /^b?3$/.test(degree)) };
  }
}

export function asked({ root }: Pick<PlayedChord, 'root'>, quality: ChordQuality): BuildExercise {
  return build('C', quality, {
    root,
    rootString: 6 as StringNumber,
    strictness: 'anywhere',
    voicing: { kind: 'any' },
  });
}

/** What the judge says of these tones. */
export function verdictOn(
  exercise: BuildExercise,
  tones: readonly HeardTone[],
  faint: readonly HeardTone[] = [],
): Verdict {
  return judge(exercise, { places: [], heard: { kind: 'chord', tones, faint }, way: 'play' });
}

export function isAccepted(
  exercise: BuildExercise,
  tones: readonly HeardTone[],
  faint: readonly HeardTone[] = [],
): boolean {
  return verdictOn(exercise, tones, faint).kind === 'right';
}

/** The tones of what was played, as an ear that makes no mistake would tell them. */
export function trueTones(pitches: readonly number[]): readonly HeardTone[] {
  return [...new Set(pitches.map((pitch) => pitchClass(pitch)))].map((tone) => ({
    pitchClass: tone,
    confidence: 1,
  }));
}
