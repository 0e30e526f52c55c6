import { afterEach, beforeEach, describe } from 'vitest';
import type { ClassState } from '../../server/classroom/state.ts';
import type { Store } from '../../server/store/store.ts';
import { known } from '../../shared/lib/assert.ts';
import type { ClassId } from '../../shared/protocol/ids.ts';
import { describeClasses } from '../server/store/contract/classes.ts';
import { describeCommit } from '../server/store/contract/commit.ts';
import { describeGroups } from '../server/store/contract/groups.ts';
import { describeLastTime } from '../server/store/contract/last-time.ts';
import { describeSettings } from '../server/store/contract/settings.ts';
import { describeTeachers } from '../server/store/contract/teachers.ts';
import { classId } from '../server/store/samples.ts';

/** A fresh, empty place to keep things in, which outlives the store that is open on it. */
export interface StorePlace {
  open(): Promise<Store>;
  remove(): Promise<void>;
}

/** The store that is open on the place of the running test. */
export interface StoreAt {
  readonly store: Store;
  /** Closes the store and opens it again, as after a restart. */
  reopen(): Promise<void>;
  /** The state of a class that must be there. */
  load(id?: ClassId): Promise<ClassState>;
}

/** What every implementation of `Store` must do. */
export function describeStore(name: string, newPlace: () => Promise<StorePlace>): void {
  describe(name, () => {
    let where: StorePlace;
    let store: Store;

    beforeEach(async () => {
      where = await newPlace();
      store = await where.open();
    });
    afterEach(async () => {
      await store.close();
      await where.remove();
    });

    const at: StoreAt = {
      get store() {
        return store;
      },
      async reopen() {
        await store.close();
        store = await where.open();
      },
      load: async (id = classId) => known(await store.classes.load(id), 'class'),
    };
    describeTeachers(at);
    describeGroups(at);
    describeClasses(at);
    describeLastTime(at);
    describeCommit(at);
    describeSettings(at);
  });
}
