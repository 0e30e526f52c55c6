import { namedDegrees, type Answer, type Named } from '../../shared/exercise/answer.ts';
import type { Finger } from '../../shared/exercise/exercise.ts';
import type { Heard, HeardNote, HeardTone, Way } from '../../shared/exercise/heard.ts';
import { place, type Place } from '../../shared/theory/fretboard.ts';
import { letters, type Alteration, type MidiNote, type PitchClass } from '../../shared/theory/pitch.ts';

/**
 * An answer as this device stored it, read back field by field: an older page, or another hand, may have written
 * it. Null where a field is not ours. What is not there was not given.
 */
export function readAnswer(stored: object): Answer | null {
  const { places, heard, way, named, root, finger, level } = fields(stored);
  const read: Answer = {
    places: Array.isArray(places) ? places.map(readPlace).filter((spot) => spot !== undefined) : [],
    ...present('heard', readHeard(heard)),
    ...present('way', readWay(way)),
    ...present('named', readNamed(named)),
    ...present('root', readPlace(root)),
    ...present('finger', readFinger(finger)),
    ...present('level', readLevel(level)),
  };
  const isOurs =
    Array.isArray(places) &&
    read.places.length === places.length &&
    (read.heard === undefined) === (heard === undefined) &&
    (read.way === undefined) === (way === undefined) &&
    (read.named === undefined) === (named === undefined) &&
    (read.root === undefined) === (root === undefined) &&
    (read.finger === undefined) === (finger === undefined) &&
    (read.level === undefined) === (level === undefined);
  return isOurs ? read : null;
}

function present<K extends string, T>(key: K, value: T | undefined): Partial<Record<K, T>> {
  return value === undefined ? {} : ({ [key]: value } as Record<K, T>);
}

function readPlace(value: unknown): Place | undefined {
  const { string, fret } = fields(value);
  return isCount(string) && isCount(fret) && string > 0 ? place(string, fret) : undefined;
}

function readHeard(value: unknown): Heard | undefined {
  const { kind, pitches, tones, faint, lowest } = fields(value);
  if (kind === 'line') {
    const read = readAll(pitches, readHeardNote);
    return read && { kind, pitches: read };
  }
  const read = readAll(tones, readHeardTone);
  const readFaint = readAll(faint, readHeardTone);
  const isOurs =
    (readFaint === undefined) === (faint === undefined) && (lowest === undefined || isPitchClass(lowest));
  if (kind !== 'chord' || !read || !isOurs) return undefined;
  return { kind, tones: read, ...present('faint', readFaint), ...present('lowest', lowest) };
}

/** All of them; undefined where there are none, or one is not ours. */
function readAll<T>(values: unknown, read: (value: unknown) => T | undefined): readonly T[] | undefined {
  if (!Array.isArray(values) || values.length === 0) return undefined;
  const found = values.map(read).filter((one) => one !== undefined);
  return found.length === values.length ? found : undefined;
}

function readHeardNote(value: unknown): HeardNote | undefined {
  const { pitch, at, confidence } = fields(value);
  const isOurs = isCount(pitch) && pitch <= 127 && isCount(at) && isShare(confidence);
  return isOurs ? { pitch: pitch as MidiNote, at, confidence } : undefined;
}

function readHeardTone(value: unknown): HeardTone | undefined {
  const { pitchClass, confidence } = fields(value);
  return isPitchClass(pitchClass) && isShare(confidence) ? { pitchClass, confidence } : undefined;
}

function readWay(value: unknown): Way | undefined {
  return (['play', 'midi'] as const).find((way) => way === value);
}

function readNamed(value: unknown): Named | undefined {
  const { kind, note, degree } = fields(value);
  if (kind === 'degree') {
    const known = namedDegrees.find((other) => other === degree);
    return known && { kind, degree: known };
  }
  const { letter, alteration } = fields(note);
  const known = letters.find((other) => other === letter);
  if (kind !== 'note' || !known || !isAlteration(alteration)) return undefined;
  return { kind, note: { letter: known, alteration } };
}

function readFinger(value: unknown): Finger | undefined {
  return ([1, 2, 3, 4] as const).find((finger) => finger === value);
}

function readLevel(value: unknown): 2 | 3 | undefined {
  return ([2, 3] as const).find((level) => level === value);
}

function fields(value: unknown): Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null ? (value as Readonly<Record<string, unknown>>) : {};
}

function isCount(value: unknown): value is number {
  return typeof value === 'number' && Number.isInteger(value) && value >= 0;
}

function isPitchClass(value: unknown): value is PitchClass {
  return isCount(value) && value < 12;
}

function isShare(value: unknown): value is number {
  return typeof value === 'number' && value >= 0 && value <= 1;
}

function isAlteration(value: unknown): value is Alteration {
  return ([-2, -1, 0, 1, 2] as readonly unknown[]).includes(value);
}
