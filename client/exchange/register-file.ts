import Papa from 'papaparse';
import { shortened } from '../../shared/lib/shortened.ts';
import { nameKey } from '../../shared/protocol/name-key.ts';
import { plainText } from '../../shared/protocol/plain-text.ts';
import { columns, columnsIn, titleRow, type Column } from './register-columns.ts';

/** A student of a table, as the server takes one. */
export interface NewStudent {
  readonly name: string;
  readonly seatNumber: number | null;
  readonly team: string | null;
  readonly moreTime: number;
}

/** What a table would do to a register; lines are counted from 1, and nothing has changed yet. */
export interface ReadRegister {
  readonly added: readonly NewStudent[];
  /** Who is on the register, and stays as they are. */
  readonly there: readonly { readonly line: number; readonly name: string }[];
  readonly refused: readonly { readonly line: number; readonly name: string; readonly reason: string }[];
  /** Titles of columns that say nothing here. */
  readonly unread: readonly string[];
}

export const mostStudents = 300;
/** Rows and columns of a table that are looked at: a school's list of everybody has hardly more. */
const mostRows = 3000;
const mostColumns = 50;
const longestName = 40;
const longestTeam = 20;
const highestSeat = 999;
const timeFactors: readonly number[] = [1, 1.25, 1.5, 2, 3];
/** Cells that a spreadsheet would take for a formula. */
const formula = /^[=+\-@\t\r]/;

/** The register as a table for spreadsheets: no cell in it is a formula. */
export function registerFileOf(students: readonly NewStudent[]): string {
  const rows = students.map(({ name, seatNumber, team, moreTime }) => [
    name,
    seatNumber ?? '',
    team ?? '',
    moreTime,
  ]);
  const text = Papa.unparse([[...titleRow], ...rows], { escapeFormulae: formula });
  // The mark by which a spreadsheet knows UTF-8.
  return `\uFEFF${text}\r\n`;
}

/** Reads a table, or names one a line, and says what it would do to this register. */
export function readRegister(text: string, register: readonly NewStudent[]): ReadRegister {
  const { rows, isCut } = rowsIn(text);
  const [first] = rows;
  const titles = first && !first.isOpen ? first.cells : [];
  const titled = columnsIn(titles);
  const order = titled ?? columns;
  const unread = titled ? titles.filter((title, index) => title !== '' && titled[index] === undefined) : [];
  const added: NewStudent[] = [];
  const there: ReadRegister['there'][number][] = [];
  const refused: ReadRegister['refused'][number][] = [];
  const lineOf = new Map<string, number>();
  const seats = new Set(register.flatMap(({ seatNumber }) => seatNumber ?? []));
  const names = new Set(register.map(({ name }) => nameKey(name)));
  for (const { line, cells, isOpen } of titled ? rows.slice(1) : rows) {
    const read = studentIn(cells, order);
    const refuse = (reason: string) => {
      const name = read.name.length > longestName ? shortened(read.name) : read.name;
      refused.push({ line, name, reason });
    };
    const key = nameKey(read.name);
    const before = lineOf.get(key);
    if (isOpen) refuse('A quote opens here and nothing closes it; all that follows is in it.');
    else if (typeof read.student === 'string') refuse(read.student);
    else if (names.has(key)) there.push({ line, name: read.name });
    else if (before !== undefined) refuse(`The same name stands in line ${String(before)}.`);
    else if (read.student.seatNumber !== null && seats.has(read.student.seatNumber))
      refuse(`Seat ${String(read.student.seatNumber)} is taken.`);
    else if (register.length + added.length >= mostStudents)
      refuse(`A register has room for ${String(mostStudents)} students.`);
    else {
      lineOf.set(key, line);
      if (read.student.seatNumber !== null) seats.add(read.student.seatNumber);
      added.push(read.student);
    }
  }
  if (isCut)
    refused.push({
      line: (rows.at(-1)?.line ?? 0) + 1,
      name: '',
      reason: `From here on nothing is read: of a table ${String(mostRows)} rows are looked at.`,
    });
  return { added, there, refused, unread };
}

interface Row {
  readonly line: number;
  readonly cells: readonly string[];
  /** A quote opens in it that nothing closes: the rest of the table is in one cell. */
  readonly isOpen: boolean;
}

/** The rows that hold something, each with the line that it starts in. */
function rowsIn(text: string): { readonly rows: readonly Row[]; readonly isCut: boolean } {
  const { data, errors, meta } = Papa.parse<string[]>(text.replace(/^\uFEFF/, ''), {
    delimiter: delimiterOf(text),
    skipEmptyLines: false,
    preview: mostRows,
  });
  const open = errors.find(({ code }) => code === 'MissingQuotes')?.row;
  let line = 1;
  const rows = data.flatMap((raw, index): readonly Row[] => {
    const start = line;
    line += raw.join('').split(/\r\n|\r|\n/).length;
    const cells = raw
      .slice(0, mostColumns)
      .map((cell) => plainText(cell.length > 1000 ? cell.slice(0, 1000) : cell));
    // Some programs tell in a line of its own what separates the cells.
    const isEmpty = cells.every((cell) => cell === '') || (index === 0 && /^sep=/i.test(cells[0] ?? ''));
    return isEmpty ? [] : [{ line: start, cells, isOpen: index === open }];
  });
  return { rows, isCut: meta.truncated };
}

/** The separator that the first line with one has most of, quoted text apart; names one a line have none. */
function delimiterOf(text: string): string {
  const bare = text.replace(/"[^"]*"/g, '').split(/\r\n|\r|\n/);
  const line = bare.find((one) => /[,;\t]/.test(one)) ?? '';
  const count = (sign: string) => line.split(sign).length;
  const [most = ','] = ['\t', ';', ','].sort((a, b) => count(b) - count(a));
  return most;
}

interface ReadStudent {
  readonly name: string;
  /** A sentence where there is none. */
  readonly student: NewStudent | string;
}

function studentIn(cells: readonly string[], order: readonly (Column | undefined)[]): ReadStudent {
  const cell = (column: Column) => {
    const text = cells[order.indexOf(column)] ?? '';
    // How our own tables keep a spreadsheet from reading a formula.
    return text.startsWith("'") && formula.test(text.slice(1)) ? text.slice(1) : text;
  };
  const [name, team] = [cell('name'), cell('team')];
  const seat = seatIn(cell('seat'));
  const moreTime = timeIn(cell('time'));
  const problem =
    nameKey(name) === ''
      ? 'There is no name in it.'
      : name.length > longestName
        ? `A name has room for ${String(longestName)} letters.`
        : seat === undefined
          ? `A seat number is 1 to ${String(highestSeat)}.`
          : team.length > longestTeam
            ? `A team’s name has room for ${String(longestTeam)} letters.`
            : moreTime === undefined
              ? 'More time is 1, 1.25, 1.5, 2 or 3.'
              : undefined;
  if (problem !== undefined || seat === undefined || moreTime === undefined)
    return { name, student: problem ?? '' };
  return { name, student: { name, seatNumber: seat, team: team === '' ? null : team, moreTime } };
}

function seatIn(text: string): number | null | undefined {
  if (text === '') return null;
  const seat = /^\d{1,3}$/.test(text) ? Number(text) : 0;
  return seat > 0 ? seat : undefined;
}

/** "1.5", "1,5", "150 %" and "+50 %" are the same; an empty cell is the usual time. */
function timeIn(text: string): number | undefined {
  if (text === '') return 1;
  const [, sign, digits = '', percent] = /^(\+?)(\d{1,3}(?:[.,]\d{1,2})?)\s*(%?)$/.exec(text) ?? [];
  const number = Number(digits.replace(',', '.'));
  const factor = percent === '%' ? number / 100 + (sign === '+' ? 1 : 0) : number;
  return timeFactors.find((one) => one === factor);
}
