import { known } from '../../../shared/lib/assert.ts';
import { notesOn } from '../../../shared/theory/chord.ts';
import type { Degree } from '../../../shared/theory/interval.ts';
import { formatNoteName, parseNoteName } from '../../../shared/theory/pitch.ts';

/** The roots that music is usually written with, and three that are rare. */
export const usualRoots = 'C C# Db D D# Eb E F F# Gb G G# Ab A A# Bb B Cb'.split(' ');

export function spelled(root: string, degrees: readonly Degree[]): readonly string[] | undefined {
  return notesOn(known(parseNoteName(root), root), degrees)?.map(formatNoteName);
}
