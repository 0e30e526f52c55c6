import { known } from '../shared/lib/assert.ts';
import { midiAt, standardGuitar, stringNumbers, type Place } from '../shared/theory/fretboard.ts';
import { voicingsOf } from '../shared/theory/playable.ts';
import { parseNoteName } from '../shared/theory/pitch.ts';
import { shapesOnString } from '../shared/theory/shapes.ts';
import { chordTable, type ChordQuality } from '../shared/theory/tables/chords.ts';
import type { Random } from '../tests/support/random.ts';

/** A string that sounds, 1 the highest, and the MIDI note that it sounds. */
export interface Strung {
  readonly string: number;
  readonly note: number;
}

const roots = ['C', 'Db', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'Ab', 'A', 'Bb', 'B'];
const open = [64, 59, 55, 50, 45, 40];
const highest = 88;

/** Every quality of the vocabulary: how a guitar plays it on every root, from the lowest string up. */
export function chordPool(): readonly (readonly Strung[])[][] {
  const qualities = Object.keys(chordTable) as ChordQuality[];
  return qualities.map((quality) =>
    roots.flatMap((name) => {
      const root = known(parseNoteName(name), name);
      const voicings = voicingsOf(standardGuitar, { root, quality }, { most: 24 });
      const shapes = stringNumbers(standardGuitar).flatMap((string) =>
        shapesOnString(standardGuitar, { root, quality }, string),
      );
      return [...voicings, ...shapes]
        .map(({ notes }) => notes.map(({ place }) => strung(place)))
        .filter((notes) => notes.every(({ note }) => note <= highest));
    }),
  );
}

function strung(place: Place): Strung {
  return { string: place.string, note: midiAt(standardGuitar, place) };
}

/** Strings and frets near each other, without a chord in mind. */
export function anyNotes(random: Random, count: number): readonly Strung[] {
  const low = random.below(16);
  return random
    .shuffled([0, 1, 2, 3, 4, 5])
    .slice(0, count)
    .map((string) => {
      const fret = random.chance(0.15) ? 0 : low + random.below(6);
      return { string: string + 1, note: (open[string] ?? 0) + fret };
    })
    .toSorted((a, b) => a.note - b.note);
}

/** The chord as it may go wrong: one tone silent on every string, or one string a fret or two off, or one string silent. */
export function wronged(random: Random, chord: readonly Strung[]): readonly Strung[] {
  const one = random.pick(chord);
  switch (random.below(4)) {
    case 0: {
      const left = chord.filter(({ note }) => (note - one.note) % 12 !== 0);
      return left.length >= 2 ? left : chord;
    }
    case 1:
      return chord.filter((each) => each !== one || chord.length < 3);
    default: {
      const off = random.pick([-1, -1, -1, 1, 1, 1, -2, 2]);
      return chord.map((each) =>
        each === one && each.note + off >= 38 && each.note + off <= highest
          ? { ...each, note: each.note + off }
          : each,
      );
    }
  }
}
