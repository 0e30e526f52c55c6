import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { counts } from './counts.ts';

test('the table of README.md says what the tests count', () => {
  const page = readFileSync(new URL('README.md', import.meta.url), 'utf8');
  const rows = [...page.matchAll(/^\| (.+?) +\| +(\d+) \| +(\d+) \| +(\d+) \| +(\d+) \|/gm)].map(
    ([, source = '', ...numbers]) => [source, ...numbers.map(Number)],
  );
  expect(rows).toEqual(
    Object.entries(counts).map(([source, { cases, agreed, disagreed, notHeld }]) => [
      source,
      cases,
      agreed,
      disagreed,
      notHeld,
    ]),
  );
});
