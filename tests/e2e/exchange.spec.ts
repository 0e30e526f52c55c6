import { readFileSync, writeFileSync } from 'node:fs';
import { expect, test, type Locator, type Page } from '@playwright/test';
import { readMusicXml } from '../../client/exchange/musicxml-in.ts';
import { planFileOf, readPlanFile } from '../../client/exchange/plan-file.ts';
import { standardGuitar } from '../../shared/theory/fretboard.ts';
import { laptop, newPage, setUpGroup, sharedServer } from '../support/browser.ts';
import { build, find, scale } from '../support/exercises.ts';

const server = sharedServer();
const exercises = [
  build('E', 'minor'),
  find('D'),
  build('A', 'm7', { rootString: 5 as never, voicing: { kind: 'form', form: 'A', full: false } }),
  scale('E', 'minor-pentatonic', 1, 5),
];

/** A plan's file with exercises at one level. */
function planFile(title: string, some: readonly unknown[], version = 1): string {
  const fields = some.map((exercise) => ({ exercise, seconds: null }));
  return JSON.stringify({ rootcall: 'plan', version, title, exercises: fields });
}

async function chooseText(field: Locator, name: string, text: string | Buffer): Promise<void> {
  await field.setInputFiles({ name, mimeType: 'application/octet-stream', buffer: Buffer.from(text) });
}

async function saved(page: Page, button: string): Promise<string> {
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: button }).click();
  return readFileSync(await (await download).path(), 'utf8');
}

async function openImport(desk: Page): Promise<Locator> {
  await desk.getByText('Import a plan').click();
  return desk.getByLabel('A plan file of Rootcall, or chord charts as MusicXML');
}

const plansOf = (desk: Page) => desk.locator('desk-group section', { hasText: 'Plans' }).locator('ul a');

/** As the server has it now. */
async function stored(desk: Page): Promise<string> {
  const id = desk.url().split('/').pop() ?? '';
  return desk.evaluate(async (group) => (await fetch(`/api/groups/${group}`)).text(), id);
}

const entityBomb = `<?xml version="1.0"?>
<!DOCTYPE score-partwise [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;">]>
<score-partwise version="4.0"><work><work-title>&b;</work-title></work></score-partwise>`;

test('plans and registers go out and come in as files', async ({ browser }) => {
  const desk = await newPage(browser, laptop);
  await setUpGroup(desk, server(), ['Amara'], exercises);
  const groupPage = desk.url();

  await test.step('a plan goes out as JSON and as MusicXML, and both read back', async () => {
    await desk.getByRole('link', { name: 'Root on string 2' }).click();
    await desk.getByText('Save as a file').click();
    const plan = readPlanFile(await saved(desk, 'Plan file (JSON)'));
    expect(plan.ok && plan.value.exercises.map(({ exercise }) => exercise)).toEqual(exercises);
    const reader = { instrument: standardGuitar, naming: 'english' } as const;
    const score = readMusicXml(await saved(desk, 'Charts (MusicXML)'), reader);
    expect(score.ok && score.value.title).toBe('Root on string 2');
    expect(score.ok && score.value.charts.map(({ measure }) => measure)).toEqual(['measure 1', 'measure 3']);
    await desk.goto(groupPage);
  });

  await test.step('files that are refused change nothing', async () => {
    const before = await stored(desk);
    const field = await openImport(desk);
    const alert = desk.locator('desk-plan-import').getByRole('alert');
    const offers = desk.locator('desk-plan-import').getByRole('button', { name: /^(Take|Leave)/ });
    const refused: readonly (readonly [string, string, string])[] = [
      ['newer.json', planFile('Newer', [find('D')], 2), 'made by a newer Rootcall'],
      ['cut.json', planFile('Cut', [find('D')]).slice(0, 60), 'no JSON'],
      ['other.json', '{"name":"another"}', 'no plan of Rootcall'],
      ['bomb.musicxml', entityBomb, 'entities of its own'],
      ['cut.musicxml', '<?xml version="1.0"?><score-partwise><part>', 'no XML that can be read'],
    ];
    for (const [name, text, sentence] of refused) {
      await chooseText(field, name, text);
      await expect(alert).toContainText(sentence);
      await expect(offers).toHaveCount(0);
    }
    const big = test.info().outputPath('big.json');
    writeFileSync(big, Buffer.alloc(50 * 1024 * 1024, ' '));
    await field.setInputFiles(big);
    await expect(alert).toContainText('50 MB');
    expect(await stored(desk)).toBe(before);
  });

  await test.step('what of a plan can’t be asked is told, and nothing changes before the press', async () => {
    const before = await stored(desk);
    const field = desk.getByLabel('A plan file of Rootcall, or chord charts as MusicXML');
    const title = '<script>document.title = "x"</script>';
    const broken = build('E', 'minor', { rootString: 1 as never });
    await chooseText(field, 'mixed.json', planFile(title, [find('D'), broken, find('E')]));
    await expect(desk.getByText('2 exercises can be taken; 1 can’t:')).toBeVisible();
    await expect(desk.getByText('Exercise 2: This form has no such chord')).toBeVisible();
    await expect(desk.getByRole('heading', { name: title })).toBeVisible();
    await desk.getByRole('button', { name: 'Leave it' }).click();
    expect(await stored(desk)).toBe(before);
    await chooseText(field, 'mixed.json', planFile(title, [find('D'), broken, find('E')]));
    // A second press makes no second plan.
    await desk.getByRole('button', { name: 'Take the other 2' }).dblclick();
    await expect(desk.getByRole('heading', { level: 1 })).toHaveText(`Plan: ${title}`);
    expect(await desk.title()).not.toBe('x');
    await desk.goto(groupPage);
    await expect(plansOf(desk)).toHaveText([title, 'Root on string 2'], { useInnerText: true });
  });

  await test.step('a whole plan is taken as it is', async () => {
    const field = await openImport(desk);
    const planned = exercises.map((exercise, index) => {
      return { id: String(index), part: 'check', exercise, harder: [find('G')], seconds: 60 } as const;
    });
    const content = { title: 'Again', aim: 'Find E.', points: ['Slowly.'], exercises: planned };
    await chooseText(field, 'again.json', planFileOf(content));
    await desk.getByRole('button', { name: 'Take this plan' }).click();
    await expect(desk.getByRole('heading', { level: 1 })).toHaveText('Plan: Again');
    await desk.getByText('Save as a file').click();
    expect(JSON.parse(await saved(desk, 'Plan file (JSON)'))).toEqual(JSON.parse(planFileOf(content)));
    await desk.goto(groupPage);
  });

  await test.step('charts of a score become a plan', async () => {
    await desk.getByRole('link', { name: 'Again' }).click();
    await desk.getByText('Save as a file').click();
    const score = await saved(desk, 'Charts (MusicXML)');
    await desk.goto(groupPage);
    await chooseText(await openImport(desk), 'again.musicxml', score);
    // Each exercise has a second level, which is a note to find.
    await expect(desk.getByText('2 exercises can be taken; 6 can’t:')).toBeVisible();
    await desk.getByRole('button', { name: 'Take the other 2' }).click();
    await expect(desk.getByRole('heading', { level: 1 })).toHaveText('Plan: Again');
    await desk.goto(groupPage);
  });

  await test.step('a table comes onto the register', async () => {
    const before = await stored(desk);
    await desk.getByText('Bring in a table').click();
    const table = desk.getByLabel('Table', { exact: true });
    await chooseText(table, 'big.csv', Buffer.alloc(3 * 1024 * 1024, 'x'));
    await expect(desk.locator('desk-register-import').getByRole('alert')).toContainText('3 MB');
    const rows = Buffer.from(
      'Seat;Name;Team\r\n1;Zo\xeb;Oak\r\n;AMARA;\r\n1;Bram;\r\n;=SUM(A1);Elm\r\n',
      'latin1',
    );
    await chooseText(table, 'register.csv', rows);
    await expect(desk.getByText('2 to add, 1 there already, 1 left out.')).toBeVisible();
    await expect(desk.getByText('Line 4, Bram: Seat 1 is taken.')).toBeVisible();
    expect(await stored(desk)).toBe(before);
    await desk.getByRole('button', { name: 'Add these 2' }).click();
    await expect(desk.locator('desk-register tbody tr')).toHaveCount(3);
    await expect(desk.getByLabel('Seat number of Zoë')).toHaveValue('1');
  });

  await test.step('the register goes out as a table without formulas', async () => {
    const table = await saved(desk, 'Save as a table (CSV)');
    expect(table).toContain("'=SUM(A1)");
    expect(table.charCodeAt(0)).toBe(0xfeff);
  });
});
