import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openStore } from '../../../server/store/sqlite/open-store.ts';
import type { StorePlace } from '../../support/store-contract.ts';

export interface TempPlace extends StorePlace {
  readonly folder: string;
  readonly dataFolder: string;
  readonly path: string;
}

/** A place for a store on a real file in a folder of its own. */
export function tempPlace(): TempPlace {
  const folder = mkdtempSync(join(tmpdir(), 'rootcall-store-'));
  const dataFolder = join(folder, 'data');
  const path = join(dataFolder, 'rootcall.db');
  return {
    folder,
    dataFolder,
    path,
    open: async () => openStore({ path }),
    remove: async () => rmSync(folder, { recursive: true, force: true }),
  };
}
