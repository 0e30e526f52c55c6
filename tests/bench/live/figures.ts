import { closeSync, fdatasyncSync, openSync, rmSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import { monitorEventLoopDelay, performance } from 'node:perf_hooks';

/** One line of the table. `goal` is the largest value that meets it, or the smallest with `atLeast`. */
export interface Row {
  readonly measure: string;
  readonly value: number | null;
  readonly goal: number | null;
  readonly atLeast?: boolean;
  readonly unit?: string;
  /** What stands behind it; where there is no value, why. */
  readonly note: string;
}

/** The value below which so large a share of them lies. */
export function at(share: number, values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? 0;
}

export const median = (values: readonly number[]) => at(0.5, values);

/** What one small write costs that the disk has to keep, in milliseconds. */
export function syncCost(folder: string): number {
  const path = join(folder, 'sync-cost');
  const file = openSync(path, 'w');
  const block = Buffer.alloc(4096, 1);
  const costs = Array.from({ length: 100 }, () => {
    const start = performance.now();
    writeSync(file, block);
    fdatasyncSync(file);
    return performance.now() - start;
  });
  closeSync(file);
  rmSync(path);
  return median(costs);
}

/** How busy this process is itself: where it is the slow one, a ratio says less than it seems to. */
export class OwnLoad {
  readonly #delay = monitorEventLoopDelay({ resolution: 1 });
  #since = performance.eventLoopUtilization();
  readonly #busiest = new Map<string, { readonly share: number; readonly lag: number }>();

  constructor() {
    this.#delay.enable();
  }

  async during<T>(name: string, work: () => Promise<T>): Promise<T> {
    this.#since = performance.eventLoopUtilization();
    this.#delay.reset();
    const result = await work();
    const share = performance.eventLoopUtilization(this.#since).utilization;
    const lag = this.#delay.percentile(99) / 1e6;
    const before = this.#busiest.get(name);
    if (!before || before.share < share) this.#busiest.set(name, { share, lag });
    return result;
  }

  report(): string {
    const lines = [...this.#busiest].map(([name, { share, lag }]) => {
      const verdict = share > 0.85 ? 'it was the slow one itself' : 'not the slow one';
      return `  ${name}: busy ${(100 * share).toFixed(0)} %, late by ${lag.toFixed(0)} ms (99 of 100): ${verdict}`;
    });
    return `The load generator:\n${lines.join('\n')}`;
  }
}

export function table(rows: readonly Row[]): string {
  const cells = rows.map(({ measure, value, goal, atLeast, unit = '', note }) => [
    measure,
    value === null ? '—' : `${value.toFixed(value < 10 ? 2 : 0)}${unit}`,
    goal === null ? '' : `${atLeast ? '≥' : '≤'} ${String(goal)}${unit}`,
    value === null ? 'not measured' : goal === null ? '' : isMet(value, goal, atLeast) ? 'met' : 'NOT MET',
    note,
  ]);
  const all = [['measure', 'value', 'goal', '', 'how'], ...cells];
  const widths = [0, 1, 2, 3].map((column) => Math.max(...all.map((row) => row[column]?.length ?? 0)));
  return all.map((row) => row.map((cell, column) => cell.padEnd(widths[column] ?? 0)).join('  ')).join('\n');
}

function isMet(value: number, goal: number, atLeast = false): boolean {
  return atLeast ? value >= goal : value <= goal;
}
