import { describe, expect, test } from 'vitest';
import { known } from '../../../shared/lib/assert.ts';
import { fingeringProblem, fingeringsOf } from '../../../shared/theory/fingering.ts';
import { fingeredShapes } from '../../../shared/theory/fingered-shapes.ts';
import { place, standardGuitar } from '../../../shared/theory/fretboard.ts';
import { hands } from '../../../shared/theory/hand.ts';
import { layoutAnywhere } from '../../../shared/theory/layout.ts';
import { parseNoteName } from '../../../shared/theory/pitch.ts';
import type { ShapeNote } from '../../../shared/theory/shape.ts';

const note = (string: number, fret: number, degree: string, finger = 0): ShapeNote => ({
  place: place(string, fret),
  degree,
  finger,
  optional: false,
});
/** The close triad of D major, root on string 2 (computed from the tuning). */
const triad = [note(3, 2, '5'), note(2, 3, '1'), note(1, 2, '3')];
const fingersOf = ({ notes }: { readonly notes: readonly ShapeNote[] }) => notes.map(({ finger }) => finger);

describe('shapes and their fingers', () => {
  test('one whose fingers are left open comes with each of its best fingerings, all else kept', () => {
    const shapes = fingeredShapes(standardGuitar, [{ notes: triad, family: 'triad' }]);
    const fingerings = fingeringsOf(
      standardGuitar,
      triad.map((one) => one.place),
    );
    if (!fingerings.ok) throw new Error(fingerings.error);
    expect(shapes.length).toBe(Math.min(3, fingerings.value.length));
    expect(shapes.map(({ cost }) => cost)).toEqual(fingerings.value.slice(0, 3).map(({ cost }) => cost));
    expect(new Set(shapes.map((shape) => fingersOf(shape).join(' '))).size).toBe(shapes.length);
    for (const shape of shapes) {
      expect(shape.family).toBe('triad');
      expect(shape.notes.map(({ place: spot, degree }) => [spot, degree])).toEqual(
        triad.map(({ place: spot, degree }) => [spot, degree]),
      );
      expect(fingeringProblem(standardGuitar, shape.notes)).toBeUndefined();
    }
  });

  test('fingers and a cost that a shape has are kept', () => {
    const own = [note(3, 2, '5', 1), note(2, 3, '1', 3), note(1, 2, '3', 2)];
    const [shape, ...more] = fingeredShapes(standardGuitar, [{ notes: own }]);
    expect(more).toEqual([]);
    expect(shape?.notes).toEqual(own);
    expect(shape?.cost).toBeGreaterThan(0);
    expect(fingeredShapes(standardGuitar, [{ notes: own, cost: 7 }])[0]?.cost).toBe(7);
    const open = [note(3, 2, '5', 2), note(2, 0, '1')];
    expect(fingeredShapes(standardGuitar, [{ notes: open, cost: 7 }])).toEqual([{ notes: open, cost: 7 }]);
  });

  test('one that no hand can hold is left out, and a smaller hand holds fewer', () => {
    const wide = [note(6, 1, '1'), note(1, 12, '5')];
    expect(fingeredShapes(standardGuitar, [{ notes: wide }])).toEqual([]);
    // 119 mm from fret 1 to fret 5 (NECK-2).
    const stretch = [note(6, 1, '1'), note(1, 5, '3')];
    const held = ([hands.usual, hands.small] as const).map(
      (hand) => fingeredShapes(standardGuitar, [{ notes: stretch }], hand).length > 0,
    );
    expect(held).toEqual([true, false]);
  });

  test('in a row the fingering is chosen whose fingers stay', () => {
    const root = known(parseNoteName('D'), 'D');
    const before = [note(3, 2, '5', 1), note(2, 3, '1', 3), note(1, 2, '3', 2)];
    const rows = fingeredShapes(standardGuitar, [{ notes: triad }]);
    const fixed = rows.map((shape) => {
      const chords = [
        { root, quality: 'major', shapes: [shape] },
        { root, quality: 'major', shapes: rows },
      ] as const;
      const found = layoutAnywhere(standardGuitar, chords, ({ shapes }) => shapes);
      return found.ok && found.value[1] && fingersOf(found.value[1].shape);
    });
    expect(fixed).toEqual(rows.map(fingersOf));
    expect(rows.map(fingersOf)).toContainEqual(before.map(({ finger }) => finger));
  });
});
