import { describe, expect, test } from 'vitest';
import { known } from '../../../shared/lib/assert.ts';
import { formTable } from '../../../shared/theory/tables/forms.ts';
import { formsAlongNeck, positionRoots } from '../../../shared/theory/tables/position-names.ts';

describe('the table of names', () => {
  const rows = (['major', 'minor'] as const).flatMap((third) =>
    formsAlongNeck.map((form) => [third, form] as const),
  );

  test.each(rows)('%s, %s form: the roots are those of the form of that name', (third, form) => {
    const row = known(
      formTable.find((one) => one.form === form && one.quality === third),
      form,
    );
    const strings = positionRoots[third][form].map(([string]) => string);
    expect(new Set(strings).size).toBe(strings.length);
    expect(strings).toEqual(expect.arrayContaining([...row.rootStrings]));
  });

  // Source: the tuning E A D G B E, 40 45 50 55 59 64 (MIDI 1.0), written apart from the instrument.
  const open = [64, 59, 55, 50, 45, 40];
  const indexFret = ([string, finger]: readonly [number, number]) =>
    (((1 - finger - (open[string - 1] ?? 0)) % 12) + 12) % 12;

  test.each(rows)('%s, %s form: all roots lie under one hand', (third, form) => {
    const [first, ...others] = positionRoots[third][form].map(indexFret);
    expect(others.length).toBeGreaterThan(0);
    expect(others.every((one) => one === first)).toBe(true);
  });

  test.each(['major', 'minor'] as const)('%s: hands of four frets follow each other without gap', (third) => {
    const lows = formsAlongNeck.map((form) => indexFret(known(positionRoots[third][form][0], form)));
    const steps = lows.map((low, index) => (known(lows[(index + 1) % 5], 'next') - low + 12) % 12);
    expect(steps.reduce((sum, step) => sum + step, 0)).toBe(12);
    expect(steps.every((step) => step >= 1 && step <= 4)).toBe(true);
  });
});
