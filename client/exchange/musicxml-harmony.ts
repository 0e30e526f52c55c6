import type { BuildExercise } from '../../shared/exercise/exercise.ts';
import { instrumentOf } from '../../shared/exercise/roots.ts';
import type { KeyNote } from '../../shared/exercise/verdict.ts';
import { chordDegrees } from '../../shared/theory/chord.ts';
import type { NoteName } from '../../shared/theory/pitch.ts';
import { chordNames } from '../../shared/theory/tables/chord-names.ts';
import { chordKinds, type KindDegree } from '../../shared/theory/tables/musicxml-kinds.ts';
import { element, type XmlElement } from './xml.ts';

/** Fewer frets make no chart. */
const fewestFrets = 4;

/** The chord's symbol and its frame; the notes are in order of pitch. */
export function harmonyOf(exercise: BuildExercise, notes: readonly KeyNote[]): XmlElement {
  const { root, quality, bass } = exercise;
  const { kind, degrees } = chordKinds[quality];
  const inversion = chordDegrees(quality).indexOf(notes[0]?.degree ?? '1');
  return element('harmony', [
    noteElement('root', root),
    element('kind', kind, { text: chordNames[quality].symbol }),
    // A bass says it already.
    ...(bass || inversion < 1 ? [] : [element('inversion', inversion)]),
    ...(bass ? [noteElement('bass', bass)] : []),
    ...degrees.map(degreeOf),
    frameOf(notes, instrumentOf(exercise).openStrings.length),
  ]);
}

function noteElement(name: 'root' | 'bass', { letter, alteration }: NoteName): XmlElement {
  return element(name, [
    element(`${name}-step`, letter),
    ...(alteration === 0 ? [] : [element(`${name}-alter`, alteration)]),
  ]);
}

/** The text of the kind says it already. */
function degreeOf({ type, value, alter }: KindDegree): XmlElement {
  return element(
    'degree',
    [element('degree-value', value), element('degree-alter', alter), element('degree-type', type)],
    { 'print-object': 'no' },
  );
}

function frameOf(notes: readonly KeyNote[], strings: number): XmlElement {
  const fretted = notes.flatMap(({ place }) => (place.fret > 0 ? [place.fret as number] : []));
  const [low, high] = fretted.length > 0 ? [Math.min(...fretted), Math.max(...fretted)] : [1, 1];
  const first = high <= fewestFrets ? 1 : low;
  const fromLowStrings = notes.toSorted((a, b) => b.place.string - a.place.string);
  return element(
    'frame',
    [
      element('frame-strings', strings),
      element('frame-frets', Math.max(fewestFrets, high - first + 1)),
      ...(first === 1 ? [] : [element('first-fret', first)]),
      ...fromLowStrings.map((note) => frameNoteOf(note, fromLowStrings)),
    ],
    { unplayed: 'x' },
  );
}

/** A finger on several strings is a barre: it starts on the string with the largest number. */
function frameNoteOf({ place, finger }: KeyNote, all: readonly KeyNote[]): XmlElement {
  const under = all.filter((other) => finger !== undefined && other.finger === finger);
  const barre =
    under.length < 2
      ? undefined
      : under[0]?.place === place
        ? 'start'
        : under.at(-1)?.place === place
          ? 'stop'
          : undefined;
  return element('frame-note', [
    element('string', place.string),
    element('fret', place.fret),
    ...(finger === undefined ? [] : [element('fingering', finger)]),
    ...(barre ? [element('barre', [], { type: barre })] : []),
  ]);
}
