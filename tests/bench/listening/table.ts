/** A figure with its goal; `atLeast` where more is better. */
export interface Cell {
  readonly value: number;
  readonly unit: string;
  /** What stands behind it: 98 of 100. */
  readonly of?: string;
  readonly goal?: number;
  readonly atLeast?: boolean;
}

export interface Line {
  readonly measure: string;
  readonly cells: readonly Cell[];
}

/** Each figure with its counts, its goal, and by how much it is missed. */
export function listeningTable(heads: readonly string[], lines: readonly Line[]): string {
  const rows = [heads, ...lines.map(({ measure, cells }) => [measure, ...cells.map(cellText)])];
  const widths = heads.map((_, column) => Math.max(...rows.map((row) => row[column]?.length ?? 0)));
  rows.splice(
    1,
    0,
    widths.map((width) => '-'.repeat(width)),
  );
  return rows
    .map((row) => `| ${widths.map((width, at) => (row[at] ?? '').padEnd(width)).join(' | ')} |`)
    .join('\n');
}

function cellText({ value, unit, of, goal, atLeast = false }: Cell): string {
  const counted = of === undefined ? '' : ` (${of})`;
  if (Number.isNaN(value)) return '–';
  const text = `${value.toFixed(unit === ' ms' ? 0 : 2)}${unit}${counted}`;
  if (goal === undefined) return text;
  const missed = atLeast ? goal - value : value - goal;
  const goalText = `${atLeast ? '≥' : '≤'} ${String(goal)}`;
  return missed <= 0 ? `${text} ${goalText}` : `${text} ${goalText} MISSED by ${missed.toFixed(2)}`;
}
