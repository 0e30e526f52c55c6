import { firstTables } from './0001-first-tables.ts';
import { moreInAnswers } from './0002-more-in-answers.ts';
import { shownCharts } from './0003-shown-charts.ts';
import { plansAndLevels } from './0004-plans-and-levels.ts';
import { markedByTeacher } from './0005-marked-by-teacher.ts';
import { heardAnswers } from './0006-heard-answers.ts';
import type { Migration } from './migration.ts';

/** In order, numbered from 1 without a gap. */
export const migrations: readonly Migration[] = [
  firstTables,
  moreInAnswers,
  shownCharts,
  plansAndLevels,
  markedByTeacher,
  heardAnswers,
];
