import type { Point } from './geometry.ts';

/** The root's own shape: a lozenge with softened corners, as a path. */
export function lozenge({ x, y }: Point, half: number): string {
  const soft = half * 0.16;
  const side = half - soft;
  return [
    `M${String(x - soft)} ${String(y - side)}Q${String(x)} ${String(y - half)} ${String(x + soft)} ${String(y - side)}`,
    `L${String(x + side)} ${String(y - soft)}Q${String(x + half)} ${String(y)} ${String(x + side)} ${String(y + soft)}`,
    `L${String(x + soft)} ${String(y + side)}Q${String(x)} ${String(y + half)} ${String(x - soft)} ${String(y + side)}`,
    `L${String(x - side)} ${String(y + soft)}Q${String(x - half)} ${String(y)} ${String(x - side)} ${String(y - soft)}Z`,
  ].join('');
}
