import type { Store } from '../../../server/store/store.ts';
import type { StorePlace } from '../store-contract.ts';
import { memoryClasses } from './classes.ts';
import { memoryGroups, memoryPlans } from './groups.ts';
import { Memory } from './tables.ts';
import { memoryTeachers } from './teachers.ts';

/**
 * A place for a store that keeps everything in maps, for tests: it outlives a store that is closed, and nothing else.
 */
export function memoryPlace(): StorePlace {
  const memory = new Memory();
  return {
    open: async () => openOn(memory),
    remove: async () => undefined,
  };
}

function openOn(memory: Memory): Store {
  let closed = false;
  return {
    teachers: memoryTeachers(memory),
    groups: memoryGroups(memory),
    plans: memoryPlans(memory),
    classes: memoryClasses(memory, () => closed),
    settings: {
      read: async (key) => memory.tables.settings.get(key),
      async write(key, value) {
        memory.together(({ settings }) => settings.set(key, value));
      },
    },
    describe: () => ({ kind: 'memory', schema: 0 }),
    async close() {
      closed = true;
    },
  };
}
