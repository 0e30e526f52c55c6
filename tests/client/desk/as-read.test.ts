import { expect, test } from 'vitest';
import { AsRead } from '../../../client/pages/desk/live/as-read.ts';
import { deskView } from './desk-view.ts';

test('a view is read in the teacher’s own naming, and the same view stays the same object', () => {
  const asRead = new AsRead();
  const sent = deskView({ naming: 'english' });
  expect(asRead.of(sent, 'english')).toBe(sent);
  const german = asRead.of(sent, 'german');
  expect(german).toEqual({ ...sent, naming: 'german' });
  expect(asRead.of(sent, 'german')).toBe(german);
  expect(asRead.of({ ...sent, boards: 1 }, 'german').boards).toBe(1);
});
