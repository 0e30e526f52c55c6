import { type Fret, type Instrument, type Place } from '../theory/fretboard.ts';
import { liesFrom, type Lies } from '../theory/lies.ts';
import { patternsFrom } from '../theory/patterns.ts';
import { octave, type NoteName } from '../theory/pitch.ts';
import { voicingsOf } from '../theory/playable.ts';
import { positionsFrom, type NamedPosition } from '../theory/positions.ts';
import { isRootAt } from '../theory/root-places.ts';
import { sameNotes, type ShapeNote } from '../theory/shape.ts';
import { shapesFrom, type Shape } from '../theory/shapes.ts';
import type { PositionForm } from '../theory/tables/position-names.ts';
import type { ChordQuality } from '../theory/tables/chords.ts';
import { isArpeggio, toneDegrees, type ToneSetId } from '../theory/tone-sets.ts';
import { checkExercise } from './check.ts';
import type { BuildExercise, Exercise, Finger, ScaleExercise } from './exercise.ts';
import { answerKey } from './key.ts';
import { capital, list, numberText, stringsText, uncapital } from './phrases.ts';
import { familyWords, formWords, ordinals } from './wording.ts';

/** What is wanted from a root. */
export type Wish =
  | { readonly kind: 'chord'; readonly quality: ChordQuality }
  | { readonly kind: 'scale'; readonly tones: ToneSetId };

/** A root at one place of a neck. */
export interface RootAt {
  readonly instrument: Instrument;
  readonly root: NoteName;
  readonly place: Place;
}

/** One way of playing what is wanted from the root: an exercise that can be asked, and whose key is its chart. */
export interface Proposal {
  readonly name: string;
  readonly lies: Lies;
  readonly exercise: Exercise;
  /** The form that names a position. */
  readonly form?: PositionForm | undefined;
}

/** Voicings beside the families: where a chord has no form, the easiest. */
const mostVoicings = 3;

/**
 * What can be played from a root at this place, as seen from it first towards the nut, last towards the bridge; empty
 * where the place doesn't sound the root: `proposalsFrom(rootAt, { kind: 'chord', quality: 'minor' })`.
 */
export function proposalsFrom(at: RootAt, wish: Wish): readonly Proposal[] {
  if (!isRootAt(at.instrument, at.root, at.place)) return [];
  const found = wish.kind === 'chord' ? chordProposals(at, wish.quality) : scaleProposals(at, wish.tones);
  const order: readonly Lies[] = ['towards-nut', 'around', 'towards-bridge'];
  return found
    .filter(({ exercise }) => checkExercise(exercise).ok)
    .toSorted((a, b) => order.indexOf(a.lies) - order.indexOf(b.lies));
}

function chordProposals(at: RootAt, quality: ChordQuality): readonly Proposal[] {
  const chord = { root: at.root, quality };
  const shapes = shapesFrom(at.instrument, chord, at.place);
  const ofFamilies = shapes.filter(isHeld).map((shape) => ({
    name: shapeName(shape),
    notes: shape.notes,
    voicing: voicingOf(shape),
  }));
  const easiest = voicingsOf(at.instrument, chord, { rootPlace: at.place, most: mostVoicings })
    .filter(({ notes }) => !shapes.some((shape) => sameNotes(shape.notes, notes)))
    .map(({ notes }) => ({
      name: `Easy shape on ${uncapital(stringsText(placesOf(notes)))}`,
      notes,
      voicing: { kind: 'strings', strings: notes.map(({ place }) => place.string) } as const,
    }));
  return [...ofFamilies, ...easiest].flatMap(({ name, notes, voicing }) => {
    const exercise = builtAt(at, quality, voicing);
    return isKeyOf(exercise, notes) ? [{ name, lies: liesFrom(at.place, placesOf(notes)), exercise }] : [];
  });
}

/** Whether a hand can hold the shape: else it comes without fingers. */
function isHeld({ notes }: Shape): boolean {
  return notes.every(({ place, finger }) => finger > 0 || place.fret === 0);
}

/** Whether the exercise shows these notes: of two that its words allow, as both orders of a shell, it shows the first. */
export function isKeyOf(exercise: BuildExercise, notes: readonly ShapeNote[]): boolean {
  return sameNotes(answerKey(exercise), notes);
}

function scaleProposals(at: RootAt, tones: ToneSetId): readonly Proposal[] {
  const { instrument, root, place } = at;
  const found = positionsFrom(instrument, root, tones, place);
  const positions = found.map((position): Proposal => {
    const under = `root under finger ${String(position.rootFinger)}`;
    return {
      name: position.form ? `${position.form} form position, ${under}` : `Position, ${under}`,
      lies: position.lies,
      exercise: positionExercise(at, tones, position),
      form: position.form,
    };
  });
  const perString = notesPerString(tones);
  const patterns =
    perString === undefined
      ? []
      : patternsFrom(instrument, root, tones, place, perString)
          // A pentatonic's positions mostly have two notes on every string anyway.
          .filter(({ notes }) => !found.some((position) => sameNotes(position.notes, notes)))
          .map(({ notes, rootAt }): Proposal => ({
            name: `${capital(numberText(perString))} notes a string, the root ${ordinals[rootAt - 1] ?? ''}`,
            lies: liesFrom(place, placesOf(notes)),
            exercise: played(at, tones, { perString: { notes: perString, rootAt }, rootFinger: 1 }),
          }));
  return [...positions, ...patterns, ...along(at, tones)];
}

/** In the octave of the neck that holds the root, both its ends included; not where the neck ends in it. */
function along(at: RootAt, tones: ToneSetId): readonly Proposal[] {
  const { string, fret } = at.place;
  const low = octave * Math.max(0, Math.ceil(fret / octave) - 1);
  const range = { low: low as Fret, high: (low + octave) as Fret };
  if (range.high > at.instrument.fretCount) return [];
  const whole = played(at, tones, { rootFinger: 1 });
  return [
    {
      name: `Along string ${String(string)}`,
      lies: 'around',
      exercise: { ...whole, strictness: 'range', range, oneString: true },
    },
  ];
}

/** A position that holds the root, as an exercise. */
export function positionExercise(at: RootAt, tones: ToneSetId, { rootFinger }: NamedPosition): ScaleExercise {
  return played(at, tones, { rootFinger: rootFinger as Finger });
}

/** Two for a pentatonic, three for seven tones and their like (common practice); an arpeggio has no such pattern. */
function notesPerString(tones: ToneSetId): 2 | 3 | undefined {
  const count = toneDegrees(tones).length;
  return isArpeggio(tones) || count < 5 ? undefined : count === 5 ? 2 : 3;
}

function task({ instrument, root, place }: RootAt) {
  const range = { low: place.fret, high: place.fret };
  return { instrument: instrument.id, root, rootString: place.string, strictness: 'place', range } as const;
}

/** The chord with its root at the place. */
export function builtAt(at: RootAt, quality: ChordQuality, voicing: BuildExercise['voicing']): BuildExercise {
  return { kind: 'build', ...task(at), quality, voicing };
}

function played(
  at: RootAt,
  scale: ToneSetId,
  how: Pick<ScaleExercise, 'rootFinger' | 'perString'>,
): ScaleExercise {
  return { kind: 'scale', ...task(at), scale, coverage: 'every-pitch', ...how };
}

/** How an exercise says the shape. */
export function voicingOf({ family, form, notes }: Shape): BuildExercise['voicing'] {
  if (form !== undefined) return { kind: 'form', form, full: false };
  const strings = notes.map(({ place }) => place.string);
  return family === 'form' ? { kind: 'strings', strings } : { kind: 'family', family, strings };
}

function shapeName({ family, form, notes, inversion }: Shape): string {
  if (family === 'form') return capital(form ? formWords[form] : 'form');
  const strings = list(notes.map(({ place }) => place.string));
  const turned = inversion === 0 ? 'root position' : `${ordinals[inversion - 1] ?? ''} inversion`;
  return `${capital(familyWords[family])} on strings ${strings}, ${turned}`;
}

function placesOf(notes: readonly ShapeNote[]): readonly Place[] {
  return notes.map(({ place }) => place);
}
