import { known } from '../lib/assert.ts';
import { perObject } from '../lib/per-object.ts';
import { notesOn } from '../theory/chord.ts';
import type { Degree } from '../theory/interval.ts';
import { parseNoteName, pitchClassOf, type NoteName, type PitchClass } from '../theory/pitch.ts';

/** At most one accidental; E♯, F♭, B♯ and C♭ only come up inside chords and scales. */
const names: readonly NoteName[] = 'C C# Db D D# Eb E F F# Gb G G# Ab A A# Bb B'
  .split(' ')
  .map((text) => known(parseNoteName(text), text));

/** What a note is usually called: 1 is C♯ and D♭. */
export function usualNames(sounding: PitchClass): readonly NoteName[] {
  return names.filter((name) => pitchClassOf(name) === sounding);
}

/**
 * The roots that a teacher would write for these degrees: of two spellings the one with fewer accidentals, both
 * where they are equal. For a major scale E♭ and not D♯, F♯ and G♭; for a single note, both.
 */
export const usualRoots: (degrees: readonly Degree[]) => readonly NoteName[] = perObject((degrees) =>
  names.filter((name) => {
    const own = accidentals(name, degrees);
    return usualNames(pitchClassOf(name)).every((other) => own <= accidentals(other, degrees));
  }),
);

/** What the spelling costs; without end where it needs a triple accidental. */
function accidentals(root: NoteName, degrees: readonly Degree[]): number {
  const notes = notesOn(root, degrees);
  return notes ? notes.reduce((sum, note) => sum + Math.abs(note.alteration), 0) : Infinity;
}
