import { memoryPlace } from '../../support/memory-store/open-memory-store.ts';
import { describeStore } from '../../support/store-contract.ts';

describeStore('store in memory', async () => memoryPlace());
