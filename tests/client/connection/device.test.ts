import { describe, expect, it } from 'vitest';
import { Device, namingKey } from '../../../client/connection/device.ts';
import { memoryStore } from '../../../client/lib/key-store.ts';

describe("a student's note names", () => {
  it('are those of the class until the student chooses', () => {
    expect(new Device(memoryStore()).naming).toBeNull();
  });

  it('are kept on the device, and given back to the class', () => {
    const storage = memoryStore();
    new Device(storage).naming = 'german';
    expect(new Device(storage).naming).toBe('german');
    new Device(storage).naming = null;
    expect(new Device(storage).naming).toBeNull();
    expect(storage.keys()).toEqual([]);
  });

  it('are those of the class where the storage holds something else', () => {
    const storage = memoryStore();
    storage.set(namingKey, 'letters');
    expect(new Device(storage).naming).toBeNull();
  });
});
