import { failure, success, type Result } from '../../../../shared/lib/result.ts';
import { formatName, parseName, type NoteNaming } from '../../../../shared/theory/naming.ts';
import { midiOf, type NoteName, type Pitch } from '../../../../shared/theory/pitch.ts';

/** Open strings as a teacher writes them, from the lowest on: "E2 A2 D3 G3 B3 E4", in German with H. */
export function tuningText(strings: readonly Pitch[], naming: NoteNaming): string {
  return [...strings]
    .reverse()
    .map((pitch) => formatName(pitch, naming) + String(pitch.octave))
    .join(' ');
}

/**
 * Reads open strings written from the lowest on; the result begins with string 1. A string without its octave lies
 * nearest to the same string of `like`; where the number of strings differs, each lies above the one before.
 */
export function readTuning(
  text: string,
  naming: NoteNaming,
  like: readonly Pitch[],
): Result<readonly Pitch[], string> {
  const words = text.split(/[\s,;–-]+/).filter((word) => word !== '');
  const models = [...like].reverse();
  const read: Pitch[] = [];
  for (const [index, word] of words.entries()) {
    const [, name = '', octave] = /^(.+?)(\d)?$/.exec(word) ?? [];
    const note = parseName(name, naming);
    if (!note) return failure(`“${word}” is no open string. Write its note, as in ${example(naming)}.`);
    const before = read[index - 1];
    const model = models.length === words.length || !before ? models[index] : undefined;
    read.push(
      octave !== undefined
        ? { ...note, octave: Number(octave) }
        : model
          ? nearest(note, midiOf(model))
          : above(note, before),
    );
  }
  return success(read.reverse());
}

function example(naming: NoteNaming): string {
  return (['E', 'A', 'D', 'G', 'B', 'E'] as const)
    .map((letter) => formatName({ letter, alteration: 0 }, naming))
    .join(' ');
}

function nearest(note: NoteName, wanted: number): Pitch {
  const far = (pitch: Pitch) => Math.abs(midiOf(pitch) - wanted);
  return octaves(note).reduce((best, pitch) => (far(pitch) < far(best) ? pitch : best));
}

function above(note: NoteName, before: Pitch | undefined): Pitch {
  const floor = before ? midiOf(before) : 0;
  return octaves(note).find((pitch) => midiOf(pitch) > floor) ?? { ...note, octave: 9 };
}

function octaves(note: NoteName): readonly [Pitch, ...Pitch[]] {
  return [0, 1, 2, 3, 4, 5, 6, 7, 8].map((octave) => ({ ...note, octave })) as [Pitch, ...Pitch[]];
}
