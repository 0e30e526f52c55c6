import { degreeAt } from './chord.ts';
import { noteOnDegree, type Degree } from './interval.ts';
import { pitchClassOf, type Alteration, type Letter, type NoteName, type PitchClass } from './pitch.ts';

/** The root and the degrees of a chord or scale, in whose light a note is named. */
export interface Key {
  readonly root: NoteName;
  readonly degrees: readonly Degree[];
}

const withSharps: readonly NoteName[] = names('C C# D D# E F F# G G# A A# B');
const withFlats: readonly NoteName[] = names('C Db D Eb E F Gb G Ab A Bb B');

function names(text: string): readonly NoteName[] {
  return text.split(' ').map((name) => ({
    letter: name.charAt(0) as Letter,
    alteration: (name.endsWith('#') ? 1 : name.endsWith('b') ? -1 : 0) as Alteration,
  }));
}

/**
 * The name of a note in a key: a tone of the chord or scale by its degree, any other by the side on which the key's
 * own accidentals lie, sharps where they are even. In F minor 8 is A♭ and 1 is D♭; in E major 10 is A♯.
 */
export function spellIn(key: Key, sounding: PitchClass): NoteName {
  const degree = degreeAt(key.root, key.degrees, sounding);
  const own = degree === undefined ? undefined : noteOnDegree(key.root, degree);
  if (own) return own;
  const side = key.degrees.reduce((sum, one) => sum + (noteOnDegree(key.root, one)?.alteration ?? 0), 0);
  const chromatic = side < 0 ? withFlats : withSharps;
  return chromatic.find((name) => pitchClassOf(name) === sounding) ?? key.root;
}
