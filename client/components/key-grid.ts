/** The middle of a key on the screen. */
export interface KeyBox {
  readonly x: number;
  readonly y: number;
}

/**
 * Which key of a keypad an arrow leads to, however the keys were laid out: on to the next or back in their order,
 * or to the nearest in the row above or below. At an edge one stays; null if the key does not move.
 */
export function keyTo(boxes: readonly KeyBox[], from: number, key: string): number | null {
  const last = boxes.length - 1;
  const here = boxes[from];
  if (!here) return null;
  const row = (way: 1 | -1): number => {
    const steps = boxes.map(({ y }) => (y - here.y) * way).filter((step) => step > 1);
    const nearest = Math.min(...steps);
    const inRow = boxes
      .map((box, index) => ({ index, aside: Math.abs(box.x - here.x), step: (box.y - here.y) * way }))
      .filter(({ step }) => Math.abs(step - nearest) < 1)
      .sort((a, b) => a.aside - b.aside);
    return inRow[0]?.index ?? from;
  };
  switch (key) {
    case 'ArrowRight':
      return Math.min(last, from + 1);
    case 'ArrowLeft':
      return Math.max(0, from - 1);
    case 'ArrowDown':
      return row(1);
    case 'ArrowUp':
      return row(-1);
    case 'Home':
      return 0;
    case 'End':
      return last;
    default:
      return null;
  }
}
