import { expect, test, type Page } from '@playwright/test';
import type { Exercise } from '../../shared/exercise/exercise.ts';
import { place, type Fret } from '../../shared/theory/fretboard.ts';
import {
  done,
  expectTask,
  joinClass,
  newPage,
  openBoard,
  openDesk,
  phone,
  sharedServer,
  spot,
  step,
  tap,
} from '../support/browser.ts';
import { build, find, name, scale } from '../support/exercises.ts';
import { ProductionServer } from '../support/production-server.ts';

/**
 * Every kind of exercise is asked at the Desk and answered on two Stands, one that reads German note names and a
 * left-handed one, on a guitar, a ukulele and a guitar with seven strings.
 */

const server = sharedServer();

const anywhere = { strictness: 'anywhere', voicing: { kind: 'any' } } as const;

const plan: readonly Exercise[] = [
  find('Bb', { strictness: 'range', range: { low: 0 as Fret, high: 5 as Fret }, wanted: 'every' }),
  name('Bb', 11),
  name('D', 1, { wanted: 'interval', place: place(1, 1), rootString: place(1, 1).string }),
  name('D', 2, { wanted: 'degree', place: place(3, 2), rootString: place(3, 2).string }),
  build('E', 'minor', { marksRoot: true, asksFinger: true }),
  build('C', 'major', { ...anywhere, bass: { letter: 'E', alteration: 0 } }),
  { ...scale('E', 'minor-pentatonic', 1, 5), coverage: 'every-tone', order: 'up' },
  build('C', 'major', { ...anywhere, instrument: 'ukulele' }),
  build('A', 'minor', { ...anywhere, instrument: 'guitar-7' }),
];

type Spots = readonly (readonly [string: number, fret: number])[];

async function nameIt(stand: Page, ...keys: readonly string[]): Promise<void> {
  for (const key of keys) {
    await stand.getByRole('radio', { name: key, exact: true }).tap();
    await expect(stand.getByRole('radio', { name: key, exact: true })).toBeChecked();
  }
}

test('every kind, on a ukulele and a left-handed seven-string too', async ({ browser }) => {
  const { desk, code } = await openDesk(browser, server(), ['Edda', 'Bram'], plan);
  await openBoard(browser, server(), code);
  const [edda, bram] = [await newPage(browser, phone), await newPage(browser, phone)];
  await joinClass(edda, server(), code, 'Edda');
  await joinClass(bram, server(), code, 'Bram');
  await edda.getByLabel('Note names').selectOption({ label: 'C D E … H (German)' });
  await bram.getByRole('switch', { name: /left-handed/i }).tap();

  /** Asks the next of the plan, lets both answer, reveals; what the Stands then say over it. */
  async function round(
    title: string,
    answers: { readonly edda: () => Promise<void>; readonly bram: () => Promise<void> },
  ) {
    await step(desk, 'Ask');
    await expectTask(bram, title);
    await answers.edda();
    await done(edda);
    await answers.bram();
    await done(bram);
    await step(desk, 'Hold');
    await expect(bram.getByText('Held').first()).toBeVisible();
    await step(desk, 'Reveal');
  }
  const both = (spots: Spots) => ({ edda: () => tap(edda, ...spots), bram: () => tap(bram, ...spots) });
  const next = async () => {
    await step(desk, 'Next');
    await expect(bram.getByText('so both hands can stay on the guitar').first()).toBeVisible();
  };

  await test.step('find every place; each reader in their own note names', async () => {
    await round('Find every B♭', {
      edda: async () => {
        await expectTask(edda, 'Find every B');
        await tap(edda, [5, 1], [3, 3]);
      },
      bram: () => tap(bram, [5, 1]),
    });
    await expect(edda.getByRole('heading', { name: /right/i })).toBeVisible();
    await expect(bram.getByText('Add string 3, fret 3.').first()).toBeVisible();
    await next();
  });

  await test.step('name a note: B in German is A♯ in English, and both are right', async () => {
    await round('Name this place', {
      edda: () => nameIt(edda, 'H', 'flat'),
      bram: () => nameIt(bram, 'A', 'sharp'),
    });
    for (const stand of [edda, bram])
      await expect(stand.getByRole('heading', { name: 'That is its name' })).toBeVisible();
    await expect(edda.getByText('String 2, fret 11 is B.').first()).toBeVisible();
    await next();
  });

  await test.step('name an interval and a degree', async () => {
    await round('Name this place', {
      edda: () => nameIt(edda, 'minor third'),
      bram: () => nameIt(bram, 'major third'),
    });
    await expect(edda.getByRole('heading', { name: 'That is its name' })).toBeVisible();
    await expect(bram.getByText('String 1, fret 1: minor third above D.').first()).toBeVisible();
    await next();
    await round('Name this place', { edda: () => nameIt(edda, '5'), bram: () => nameIt(bram, '5') });
    await next();
  });

  await test.step('build with the root marked and the finger on it', async () => {
    const triad: Spots = [
      [3, 4],
      [2, 5],
      [1, 3],
    ];
    await round('Build E minor', {
      edda: async () => {
        await tap(edda, ...triad);
        await edda.getByRole('button', { name: 'Mark the root' }).tap();
        await spot(edda, 2, 5).tap();
        await edda.getByRole('button', { name: 'Finger 3' }).tap();
      },
      bram: async () => {
        await tap(bram, ...triad);
        await bram.getByRole('button', { name: 'Mark the root' }).tap();
        await spot(bram, 1, 3).tap();
        await bram.getByRole('button', { name: 'Finger 3' }).tap();
      },
    });
    await expect(bram.getByText(/The mark is on the root of the relative major/).first()).toBeVisible();
    await next();
  });

  await test.step('a slash chord, a scale in order', async () => {
    await round(
      'Build C/E',
      both([
        [4, 2],
        [3, 0],
        [2, 1],
      ]),
    );
    await next();
    await round(
      'E minor pentatonic',
      both([
        [4, 2],
        [3, 0],
        [3, 2],
        [2, 0],
        [2, 3],
        [2, 5],
      ]),
    );
    await next();
  });

  await test.step('a ukulele, and a left-handed guitar with seven strings', async () => {
    await round(
      'Build C major',
      both([
        [4, 0],
        [3, 0],
        [2, 0],
        [1, 3],
      ]),
    );
    await next();
    await round(
      'Build A minor',
      both([
        [7, 10],
        [6, 8],
        [5, 7],
      ]),
    );
    await expect(bram.getByRole('heading', { name: /right/i })).toBeVisible();
  });

  const rows = server().rows(
    `select rounds.number as round, students.name as name, json_extract(answers.verdict, '$.cause') as cause
       from answers join rounds on rounds.id = answers.round_id join students on students.id = answers.student_id
       where json_extract(answers.verdict, '$.kind') <> 'right' order by rounds.number`,
  );
  expect(rows).toEqual([
    { round: 1, name: 'Bram', cause: 'missing-tone' },
    { round: 3, name: 'Bram', cause: 'major-for-minor' },
    { round: 5, name: 'Bram', cause: 'relative-root' },
  ]);
});

test('the Desk makes every kind on the spot, and five at once', async ({ browser }) => {
  const fresh = await ProductionServer.start();
  try {
    const { desk, code } = await openDesk(browser, fresh, ['Edda'], [find('D')]);
    const edda = await newPage(browser, phone);
    await joinClass(edda, fresh, code, 'Edda');
    await expect(edda.getByText('so both hands can stay on the guitar')).toBeVisible();

    for (const [kind, title] of [
      ['Find', 'Find D'],
      ['Name', 'Name this place'],
      ['Build', 'Build D minor'],
      ['Scale', 'D minor pentatonic'],
    ] as const)
      await test.step(`asked on the spot: ${kind}`, async () => {
        await desk.getByRole('button', { name: 'Ask something else' }).click();
        const dialog = desk.getByRole('dialog');
        await dialog.getByRole('radio', { name: kind, exact: true }).check({ force: true });
        await dialog.getByRole('button', { name: 'Ask it now' }).click();
        await expectTask(edda, title);
        await step(desk, 'Hold');
        await step(desk, 'Reveal');
        await step(desk, 'Next');
      });

    await test.step('five made at once, and one of them asked', async () => {
      await desk.getByRole('button', { name: 'Ask something else' }).click();
      const dialog = desk.getByRole('dialog');
      await dialog.getByRole('radio', { name: 'Make me five' }).check({ force: true });
      await dialog.getByRole('button', { name: /^Make/ }).click();
      await expect(dialog.getByRole('heading', { level: 3 })).toHaveCount(5);
      const title = await dialog.getByRole('heading', { level: 3 }).first().innerText();
      await dialog.getByRole('button', { name: /^Ask/ }).first().click();
      await expectTask(edda, title);
    });
  } finally {
    await fresh.remove();
  }
});
