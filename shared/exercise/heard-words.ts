import { known } from '../lib/assert.ts';
import { degreeAt } from '../theory/chord.ts';
import { noteOnDegree } from '../theory/interval.ts';
import { formatName, type NoteNaming } from '../theory/naming.ts';
import { parseNoteName, pitchClass, pitchClassOf, type NoteName, type PitchClass } from '../theory/pitch.ts';
import { spellIn, type Key } from '../theory/spelling.ts';
import type { Exercise } from './exercise.ts';
import type { Explanation } from './explain.ts';
import type { Heard } from './heard.ts';
import { say } from './messages.ts';
import { pickedOnce } from './order.ts';
import { wordCount } from './phrases.ts';
import { degreesAsked } from './roots.ts';
import { wordLimit } from './slip-words.ts';

/** Before the reveal a note is called the same in every key (common practice, no source). */
const neutralNames = 'C C# D Eb E F F# G G# A Bb B'
  .split(' ')
  .map((text) => known(parseNoteName(text), text));

/** Of a long line the last notes are told. */
const mostTold = 8;

/**
 * What was heard, for showing it live: `heardWords(heard, 'english')` is "Heard: A, C♯, E". Every note has one fixed name,
 * so that nothing of the key is given away; where a key may be known, notes are named in its light, a chord from its root.
 */
export function heardWords(heard: Heard, naming: NoteNaming, key?: Key): string {
  const names = soundingIn(heard, key).map((tone) => nameOf(tone, naming, key));
  return `Heard: ${names.length > mostTold ? '… ' : ''}${names.slice(-mostTold).join(', ')}`;
}

/** Tones from the root up, where it may be known; the notes of a line as they came, each repeated one once. */
export function soundingIn(heard: Heard, key: Key | undefined): readonly PitchClass[] {
  if (heard.kind === 'line')
    return pickedOnce(heard.pitches.map(({ pitch }) => pitch)).map((pitch) => pitchClass(pitch));
  const tones = [...new Set(heard.tones.map((tone) => tone.pitchClass))];
  const from = key ? pitchClassOf(key.root) : (heard.lowest ?? tones[0] ?? 0);
  return tones.toSorted((a, b) => pitchClass(a - from) - pitchClass(b - from));
}

/** A tone's name in a key, or the one name that it has without. */
export function nameOf(tone: PitchClass, naming: NoteNaming, key: Key | undefined): string {
  return formatName(key ? spelledIn(key, tone) : known(neutralNames[tone], 'twelve names'), naming);
}

/** The other third is spelled as a third, whatever the key's accidentals. */
function spelledIn(key: Key, tone: PitchClass): NoteName {
  const isForeign = key.degrees.length > 1 && degreeAt(key.root, key.degrees, tone) === undefined;
  const third = isForeign ? degreeAt(key.root, ['b3', '3'], tone) : undefined;
  const name = third && noteOnDegree(key.root, third);
  return name && Math.abs(name.alteration) < 2 ? name : spellIn(key, tone);
}

/** In whose light the notes of an answer are named once it may be. */
export function keyOf(exercise: Exercise): Key {
  return { root: exercise.root, degrees: degreesAsked(exercise) };
}

/** The words with what was heard before them, where that leaves them short enough (SPEC MSG-1). */
export function withHeard(
  exercise: Exercise,
  heard: Heard,
  naming: NoteNaming,
  { heading, text, tryThis }: Explanation,
): Explanation {
  const told = `${heardWords(heard, naming, keyOf(exercise))}.`;
  const count = [told, text, tryThis].reduce((sum, part) => sum + wordCount(part), 0);
  const isLong = soundingIn(heard, keyOf(exercise)).length > mostTold;
  return { heading, text: isLong || count >= wordLimit ? text : `${told} ${text}`, tryThis };
}

export function heardHeading({ kind }: Exercise): string {
  if (kind === 'scale') return say('right-scale-heading');
  return say(kind === 'find' ? 'heard-right-note-heading' : 'heard-right-tones-heading');
}
