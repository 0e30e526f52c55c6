import { instrumentById, standardGuitar, type Instrument } from '../../../shared/theory/fretboard.ts';
import type { NoteNaming } from '../../../shared/theory/naming.ts';
import { Device } from '../../connection/device.ts';
import type { KeyStore } from '../../lib/key-store.ts';
import type { Labels } from './seen.ts';

/** How this person reads and holds the neck; kept on the device; hand, note names and way are the Stand's too. */
export interface Settings {
  readonly instrument: Instrument;
  readonly leftHanded: boolean;
  readonly naming: NoteNaming;
  readonly labels: Labels;
  /** How questions are answered, where they can be played. */
  readonly way: Device['way'];
}

const instrumentKey = 'rootcall.explore.instrument';
const labelsKey = 'rootcall.explore.labels';

export function readSettings(storage: KeyStore): Settings {
  const device = new Device(storage);
  return {
    instrument: instrumentById(storage.get(instrumentKey) ?? '') ?? standardGuitar,
    leftHanded: device.leftHanded,
    naming: device.naming ?? 'english',
    way: device.way,
    labels: storage.get(labelsKey) === 'notes' ? 'notes' : 'degrees',
  };
}

/** Keeps what has changed, and nothing else: the Stand's note names stay the class's until some are chosen. */
export function keepSettings(storage: KeyStore, change: Partial<Settings>): void {
  const device = new Device(storage);
  const { instrument, leftHanded, naming, labels, way } = change;
  if (instrument) storage.set(instrumentKey, instrument.id);
  if (leftHanded !== undefined) device.leftHanded = leftHanded;
  if (naming) device.naming = naming;
  if (way) device.way = way;
  if (labels) storage.set(labelsKey, labels);
}
