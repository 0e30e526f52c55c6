/** What a register's table may say of a student. */
export type Column = 'name' | 'seat' | 'team' | 'time';

/** In the order that is taken where no row of titles says another. */
export const columns: readonly Column[] = ['name', 'seat', 'team', 'time'];

/** As they are written; the first is ours. */
const titles: Readonly<Record<Column, readonly string[]>> = {
  name: ['name', 'names', 'student', 'students', 'student name', 'full name', 'first name'],
  seat: ['seat', 'seat number', 'seat no', 'number', 'no'],
  team: ['team', 'section', 'team name'],
  time: ['more time', 'time', 'extra time', 'time factor'],
};

export const titleRow: readonly string[] = columns.map((column) => titles[column][0] ?? column);

function columnOf(title: string): Column | undefined {
  const plain = title
    .toLowerCase()
    .replace(/[._\-:*]+/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();
  return columns.find((column) => titles[column].includes(plain));
}

/** Which cell says what, for a row that holds titles; undefined for a row that holds a student. */
export function columnsIn(row: readonly string[]): readonly (Column | undefined)[] | undefined {
  const found = row.map(columnOf);
  if (!found.includes('name')) return undefined;
  // Of two columns with one title the first is read.
  return found.map((column, index) => (found.indexOf(column) === index ? column : undefined));
}
