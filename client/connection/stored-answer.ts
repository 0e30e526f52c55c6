import { namedDegrees, type Answer, type Named } from '../../shared/exercise/answer.ts';
import type { Finger } from '../../shared/exercise/exercise.ts';
import { place, type Place } from '../../shared/theory/fretboard.ts';
import { letters, type Alteration } from '../../shared/theory/pitch.ts';

/**
 * An answer as this device stored it, read back field by field: an older page, or another hand, may have written
 * it. Null where a field is not ours. What is not there was not given.
 */
export function readAnswer(stored: object): Answer | null {
  const { places, named, root, finger, level } = fields(stored);
  const read: Answer = {
    places: Array.isArray(places) ? places.map(readPlace).filter((spot) => spot !== undefined) : [],
    ...present('named', readNamed(named)),
    ...present('root', readPlace(root)),
    ...present('finger', readFinger(finger)),
    ...present('level', readLevel(level)),
  };
  const isOurs =
    Array.isArray(places) &&
    read.places.length === places.length &&
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

function isAlteration(value: unknown): value is Alteration {
  return ([-2, -1, 0, 1, 2] as readonly unknown[]).includes(value);
}
