/** Results are kept, so that nothing is optimised away. */
export const sink: { value?: unknown } = {};

/** The middle of several runs of one case, in microseconds. */
export function middle(run: () => void, runs = 15): number {
  const times = Array.from({ length: runs }, () => {
    const start = performance.now();
    run();
    return (performance.now() - start) * 1000;
  });
  return times.sort((a, b) => a - b)[Math.floor(runs / 2)] ?? 0;
}

/** The least there is to do, in microseconds for one case. */
export interface Least {
  readonly name: string;
  readonly time: number;
}

export function report<One extends { readonly id: string }>(
  title: string,
  some: readonly One[],
  timeOf: (one: One) => number,
  least: Least,
): void {
  const times = some.map((one) => ({ id: one.id, time: timeOf(one) })).sort((a, b) => a.time - b.time);
  const at = (share: number) =>
    times[Math.min(times.length - 1, Math.floor(times.length * share))]?.time ?? 0;
  const figures = `median ${at(0.5).toFixed(1)} µs · 99 of 100 ${at(0.99).toFixed(1)} µs · worst ${at(1).toFixed(1)} µs`;
  console.log(
    `${title}: ${figures} (${times.at(-1)?.id ?? ''}) · median ÷ ${least.name}: ${(at(0.5) / least.time).toFixed(0)}`,
  );
}
