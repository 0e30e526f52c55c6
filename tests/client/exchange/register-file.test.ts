import { describe, expect, test } from 'vitest';
import { textOf } from '../../../client/exchange/file-text.ts';
import { readRegister, registerFileOf, type NewStudent } from '../../../client/exchange/register-file.ts';

function student(name: string, fields: Partial<NewStudent> = {}): NewStudent {
  return { name, seatNumber: null, team: null, moreTime: 1, ...fields };
}

const amara = student('Amara', { seatNumber: 4, team: 'Oak', moreTime: 1.5 });
const bram = student('Bram', { seatNumber: 5 });

describe('EXCHANGE-5: a table of students', () => {
  const tables: readonly (readonly [string, string])[] = [
    ['with titles', 'Name,Seat,Team,More time\nAmara,4,Oak,1.5\nBram,5,,\n'],
    ['in another order', 'seat number;MORE TIME;team;Name\n4;1,5;Oak;Amara\n5;;;Bram'],
    ['without titles', 'Amara,4,Oak,1.5\nBram,5'],
    [
      'with tabs, as pasted from a spreadsheet',
      'Student\tSeat\tTeam\tTime\r\nAmara\t4\tOak\t150 %\r\nBram\t5\t\t\r\n',
    ],
    [
      'with quotes, empty lines and a mark in front',
      '\uFEFF\n"Name";"Seat";"Team";"Time"\n\n"Amara";"4";"Oak";"+50 %"\n;;;\n"Bram";5;;1\n',
    ],
    ['with line ends of an old Mac', 'Name,Seat,Team,Time\rAmara,4,Oak,1.5\rBram,5,,1'],
  ];
  test.each(tables)('%s', (_, text) => {
    expect(readRegister(text, [])).toEqual({ added: [amara, bram], there: [], refused: [], unread: [] });
  });

  test('names alone, one a line', () => {
    expect(readRegister('Amara\nBram de Wit\n', []).added).toEqual([
      student('Amara'),
      student('Bram de Wit'),
    ]);
  });

  test('a column that says nothing here is told', () => {
    const { added, unread } = readRegister('Email,Name,Name\na@b.example,Amara,Other', []);
    expect(added).toEqual([student('Amara')]);
    expect(unread).toEqual(['Email', 'Name']);
  });

  test('who is there stays; what can’t be added is told by its line', () => {
    const long = 'x'.repeat(41);
    const text = [
      'Name,Seat,Team,More time',
      'ÁMARA,9,,',
      'Bram,4,,',
      'Celeste,0,,',
      'Dora,,,4',
      `${long},,,`,
      '"Edda,\nof the hills",6,,',
      `Fenn,,${'y'.repeat(21)},`,
      ',7,,',
      '"EDDA, of the hills",,,',
      'Gil,6,,',
      'Hana,8,Oak,2',
    ].join('\n');
    const { added, there, refused } = readRegister(text, [amara]);
    expect(there).toEqual([{ line: 2, name: 'ÁMARA' }]);
    expect(added.map(({ name }) => name)).toEqual(['Edda, of the hills', 'Hana']);
    expect(refused.map(({ line, reason }) => [line, reason])).toEqual([
      [3, 'Seat 4 is taken.'],
      [4, 'A seat number is 1 to 999.'],
      [5, 'More time is 1, 1.25, 1.5, 2 or 3.'],
      [6, 'A name has room for 40 letters.'],
      [9, 'A team’s name has room for 20 letters.'],
      [10, 'There is no name in it.'],
      [11, 'The same name stands in line 7.'],
      [12, 'Seat 6 is taken.'],
    ]);
  });

  test('a register has room for 300', () => {
    const names = Array.from({ length: 301 }, (_, at) => `Student ${String(at)}`).join('\n');
    const { added, refused } = readRegister(names, [amara]);
    expect(added).toHaveLength(299);
    expect(refused.map(({ line }) => line)).toEqual([300, 301]);
  });

  test('a quote that nothing closes adds nobody, and is told where it opens', () => {
    const { added, refused } = readRegister('Name,Seat\nDora,2\n"Amara,4\nBram,5', []);
    expect(added).toEqual([student('Dora', { seatNumber: 2 })]);
    expect(refused.map(({ line, reason }) => [line, reason])).toEqual([
      [3, 'A quote opens here and nothing closes it; all that follows is in it.'],
    ]);
    expect(readRegister('"Name,Seat\nAmara,4', []).refused).toHaveLength(1);
  });

  test('a first line that only names the separator is no student', () => {
    expect(readRegister('sep=;\r\nName;Seat\r\nAmara;x\r\nBram;5\r\n', [])).toMatchObject({
      added: [bram],
      refused: [{ line: 3, name: 'Amara' }],
    });
  });

  test('of a table without end 3000 rows are looked at, and that is told', () => {
    const { added, refused } = readRegister('Amara\n'.repeat(400_000), []);
    expect(added).toEqual([student('Amara')]);
    expect(refused).toHaveLength(3000);
    expect(refused.at(-1)).toMatchObject({
      line: 3001,
      reason: expect.stringMatching(/3000 rows/) as string,
    });
    expect(readRegister(`Name${','.repeat(1_000_000)}\nAmara`, []).added).toEqual([student('Amara')]);
  });

  test('EDGE-2: what can’t be seen is left out', () => {
    expect(readRegister('\u202eAmara\u0007\n\u2800\n', []).added).toEqual([student('Amara')]);
  });

  test('Windows-1252 and UTF-8 are told apart', () => {
    const bytes = Uint8Array.from('Zoë,3', (sign) => sign.charCodeAt(0));
    for (const file of [bytes, new TextEncoder().encode('\uFEFFZoë,3')]) {
      const text = textOf(file);
      expect(text.ok && readRegister(text.value, []).added).toEqual([student('Zoë', { seatNumber: 3 })]);
    }
  });
});

describe('EXCHANGE-6: the register as a table', () => {
  const risky = ['=1+1', '+Ana', '-Ben', '@Cora'].map((name) => student(name, { team: '=2' }));

  test('a spreadsheet reads no formula in it', () => {
    const [, ...lines] = registerFileOf(risky).trim().split('\r\n');
    expect(lines.map((line) => line.replaceAll('"', ''))).toEqual([
      "'=1+1,,'=2,1",
      "'+Ana,,'=2,1",
      "'-Ben,,'=2,1",
      "'@Cora,,'=2,1",
    ]);
  });

  test('and it comes back as it was', () => {
    const all = [amara, bram, student('Cho, "Mimi"'), ...risky];
    expect(readRegister(registerFileOf(all), [])).toEqual({ added: all, there: [], refused: [], unread: [] });
  });
});
