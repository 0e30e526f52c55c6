/** Rows and columns of what was copied from a spreadsheet: `pastedCells('a\tb\nc')` is `[['a', 'b'], ['c']]`. */
export function pastedCells(text: string): readonly (readonly string[])[] {
  const lines = text.replace(/\r\n?/g, '\n').replace(/\n$/, '').split('\n');
  return lines.map((line) => line.split('\t').map((cell) => cell.trim()));
}
