import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { place, standardGuitar } from '../../shared/theory/fretboard.ts';
import { build, find, name, scale } from '../support/exercises.ts';

/** DEVELOPERS.md lists the public functions of theory and exercise, each with an example; here they are run. */
const page = readFileSync('DEVELOPERS.md', 'utf8');
const rows = [...page.matchAll(/^\| `(.+?)`\s+\| `(.+?)`\s+\|$/gm)].map(([, example = '', gives = '']) => ({
  example: example.replaceAll('\\|', '|'),
  gives: gives.replaceAll('\\|', '|'),
}));

const rooms = ['shared/theory', 'shared/exercise'];
const modules = await Promise.all(
  rooms.flatMap((room) =>
    filesIn(room, 1).map((file) => import(resolve(file)) as Promise<Record<string, unknown>>),
  ),
);
/** What the section on shapes and progressions names in its first words. */
const round = {
  at: { instrument: standardGuitar, root: { letter: 'E', alteration: 0 }, place: place(2, 5) },
  inC: { tonic: { letter: 'C', alteration: 0 }, mode: 'major' },
  low: { low: 1, high: 12 },
  layers: { chord: 'm7', pentatonic: 'minor-pentatonic', scale: 'dorian' },
};
const scope: Record<string, unknown> = Object.assign(
  { build, find, name, scale, ...round },
  ...modules,
) as Record<string, unknown>;

/** The sources of a folder, so many levels deep. */
function filesIn(folder: string, levels: number): readonly string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return levels > 1 ? filesIn(path, levels - 1) : [];
    return /\.(ts|mjs)$/.test(path) ? [path] : [];
  });
}

function run(example: string): unknown {
  const names = Object.keys(scope);
  const evaluate = new Function(...names, `return (${example});`) as (...values: unknown[]) => unknown;
  return evaluate(...names.map((one) => scope[one]));
}

test.each(rows.map(({ example, gives }) => [example, gives]))('%s is %s', (example, gives) => {
  expect(run(example)).toEqual(run(gives));
});

/** What other rooms take from the two. */
function imported(): readonly string[] {
  const sources = ['client', 'server', 'scripts', 'shared/protocol'].flatMap((room) => filesIn(room, 9));
  const found = sources.flatMap((file) =>
    [
      ...readFileSync(file, 'utf8').matchAll(
        /import \{([^}]*)\} from '[^']*\/(?:theory|exercise)\/[a-z-]+\.[jt]s'/g,
      ),
    ].flatMap(([, list = '']) => list.split(',').map((one) => one.trim())),
  );
  return [...new Set(found)].filter((one) => typeof scope[one] === 'function').sort();
}

test('every function that another room uses has its example', () => {
  const listed = rows.map(({ example }) => example).join('\n');
  const all = imported();
  expect(all.length).toBeGreaterThan(40);
  expect(all.filter((one) => !new RegExp(`\\b${one}\\(`).test(listed))).toEqual([]);
});
