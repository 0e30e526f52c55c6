import { describe, expect, it } from 'vitest';
import { keepSettings, readSettings } from '../../../client/pages/explore/settings.ts';
import { Device } from '../../../client/connection/device.ts';
import { memoryStore } from '../../../client/lib/key-store.ts';
import { instrumentById } from '../../../shared/theory/fretboard.ts';
import { known } from '../../../shared/lib/assert.ts';

describe('the settings of the page for exploring', () => {
  it('are kept on the device', () => {
    const storage = memoryStore();
    const ukulele = known(instrumentById('ukulele'), 'ukulele');
    const chosen = {
      instrument: ukulele,
      leftHanded: true,
      naming: 'german',
      labels: 'notes',
      way: 'play',
    } as const;
    keepSettings(storage, chosen);
    expect(readSettings(storage)).toEqual(chosen);
  });

  it('keep only what was changed: a student’s note names stay those of the class', () => {
    const storage = memoryStore();
    keepSettings(storage, { leftHanded: true });
    expect(new Device(storage).naming).toBeNull();
    expect(new Device(storage).leftHanded).toBe(true);
    expect(readSettings(storage).naming).toBe('english');
  });

  it('fall back where the storage holds something else', () => {
    const storage = memoryStore();
    storage.set('rootcall.explore.instrument', 'lute-99');
    storage.set('rootcall.explore.labels', 'letters');
    expect(readSettings(storage)).toMatchObject({ instrument: { id: 'guitar' }, labels: 'degrees' });
  });
});
