import { expect, test } from 'vitest';
import type { StoreAt } from '../../../support/store-contract.ts';

export function describeSettings(at: StoreAt): void {
  test('a setting is kept, and the newest wins', async () => {
    expect(await at.store.settings.read('address')).toBeUndefined();
    await at.store.settings.write('address', 'http://192.0.2.7:8080');
    await at.store.settings.write('address', 'http://192.0.2.8:8080');
    await at.reopen();
    expect(await at.store.settings.read('address')).toBe('http://192.0.2.8:8080');
  });
}
