import { expect, test } from '@playwright/test';
import {
  expectTask,
  joinClass,
  laptop,
  newPage,
  openClass,
  phone,
  setUpGroup,
  sharedServer,
  step,
} from '../support/browser.ts';
import { wordingOf } from '../../shared/exercise/wording.ts';
import { course } from '../../shared/plans/course.ts';

const server = sharedServer();

test('a teacher takes a ready plan from the shelf, and teaches from it', async ({ browser }) => {
  const desk = await newPage(browser, laptop);
  await setUpGroup(desk, server(), ['Edda'], []);
  await desk.getByText('Ready plans: a course from string 2').click();
  const [first] = course;
  if (!first) throw new Error('the shelf is empty');
  const lesson = desk.locator('desk-shelf details').first();
  await lesson.getByText(first.title).click();
  await expect(lesson.getByText(first.aim)).toBeVisible();
  await expect(lesson.getByRole('heading', { name: 'Slips to expect' })).toBeVisible();
  await lesson
    .getByRole('button', { name: `Take these ${String(first.exercises.length)} exercises` })
    .click();
  await expect(desk.getByLabel('Title of the plan')).toHaveValue(first.title);
  await expect(desk.locator('desk-plan ol > li')).toHaveCount(first.exercises.length);

  await desk.getByRole('link', { name: /Strings/ }).click();
  const code = await openClass(desk, first.title);
  const stand = await newPage(browser, phone);
  await joinClass(stand, server(), code, 'Edda');
  await step(desk, 'Ask');
  const [asked] = first.exercises;
  if (!asked) throw new Error('the lesson is empty');
  await expectTask(stand, wordingOf(asked.exercise, 'english').title);
});
