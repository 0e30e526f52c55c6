import type { RowCounts } from './examine.ts';

const counted = [
  ['groups', 'group'],
  ['students', 'student'],
  ['classes', 'class'],
  ['answers', 'answer'],
] as const;

/** "2 groups, 31 students, 1 class, 812 answers" */
export function inWords(rows: RowCounts): string {
  return counted
    .map(([table, one]) => {
      const count = rows.get(table) ?? 0;
      return `${String(count)} ${count === 1 ? one : table}`;
    })
    .join(', ');
}

/** A time on this machine's clock as a part of a file's name: 2026-11-25-181500. */
export function stamp(time: Date): string {
  return time.toLocaleString('sv-SE').replaceAll(':', '').replace(' ', '-');
}
