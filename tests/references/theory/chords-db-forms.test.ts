import guitar from '@tombatossals/chords-db/lib/guitar.json' with { type: 'json' };
import { expect, test } from 'vitest';
import { formTable, type FormRow } from '../../../shared/theory/tables/forms.ts';
import { counts } from '../counts.ts';
import { positions, reasons } from './chords-db-positions.ts';

/** Source: chords-db 0.5.1, as in chords-db-positions.ts; the fingers are only here. */
const fingers = Object.values(
  guitar.chords as unknown as Record<
    string,
    readonly { readonly positions: readonly { readonly fingers: readonly number[] }[] }[]
  >,
)
  .flat()
  .flatMap((entry) => entry.positions.map((position) => position.fingers));

/** The fingerings there of positions with the row's frets, moved; none has an open string. */
function published(row: FormRow): readonly string[] {
  return positions.flatMap(({ name, position: { frets }, chord }, index) => {
    const lowest = Math.min(...frets.filter((fret) => fret > 0));
    const isSame =
      chord.quality === row.quality &&
      chord.bass === undefined &&
      !reasons.has(name) &&
      row.frets.every((fret, at) => (fret === null ? -1 : fret + lowest - 1) === frets[at]);
    return isSame ? [(fingers[index] ?? []).join('')] : [];
  });
}

const rows = formTable.map((row) => ({
  name: `${row.form} ${row.quality}`,
  own: row.fingers.join(''),
  there: published(row),
}));

test('FORM-1: fingers are among those of the published positions with the same frets', () => {
  const held = rows.filter(({ there }) => there.length > 0);
  const others = held.filter(({ own, there }) => !there.includes(own));
  expect([held.length, others.length]).toEqual([
    counts['chords-db, movable forms'].cases,
    counts['chords-db, movable forms'].disagreed,
  ]);
  // One position only; a finger for each fret is common practice.
  expect(others.map(({ name, own, there }) => [name, own, ...there])).toEqual([['C m7', '031410', '021310']]);
});

test('FORM-1: forms without a published position are common practice, no source', () => {
  const unpublished = rows.filter(({ there }) => there.length === 0).map(({ name }) => name);
  expect(unpublished.filter((name) => !name.startsWith('triad'))).toEqual(['A sus2', 'D sus2']);
});
