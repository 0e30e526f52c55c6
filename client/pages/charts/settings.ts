import type { NoteNaming } from '../../../shared/theory/naming.ts';
import type { Marks } from '../../charts/chart-marks.ts';
import { Device } from '../../connection/device.ts';
import type { KeyStore } from '../../lib/key-store.ts';

/** How this person reads charts; kept on the device, hand and note names together with the Stand's. */
export interface Settings {
  /** Null: as the class does. */
  readonly naming: NoteNaming | null;
  readonly leftHanded: boolean;
  readonly marks: Marks;
}

export const marksChoices: readonly (readonly [Marks, string])[] = [
  ['degrees', 'degrees: R ♭3 5'],
  ['names', 'note names'],
  ['fingers', 'fingers'],
  ['none', 'nothing'],
];

export const namingChoices: readonly (readonly [NoteNaming | '', string])[] = [
  ['', 'as the class'],
  ['english', 'C D E … B'],
  ['german', 'C D E … H (German)'],
  ['solfege', 'do re mi'],
];

const marksKey = 'rootcall.charts.marks';

export function readSettings(storage: KeyStore): Settings {
  const { naming, leftHanded } = new Device(storage);
  const kept = storage.get(marksKey);
  return { naming, leftHanded, marks: marksChoices.find(([marks]) => marks === kept)?.[0] ?? 'degrees' };
}

export function keepSettings(storage: KeyStore, change: Partial<Settings>): void {
  const device = new Device(storage);
  if (change.naming !== undefined) device.naming = change.naming;
  if (change.leftHanded !== undefined) device.leftHanded = change.leftHanded;
  if (change.marks) storage.set(marksKey, change.marks);
}
