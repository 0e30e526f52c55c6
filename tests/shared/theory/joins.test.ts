import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { known } from '../../../shared/lib/assert.ts';
import { holds, standardGuitar, type Place } from '../../../shared/theory/fretboard.ts';
import { joinOf } from '../../../shared/theory/joins.ts';
import { parseNoteName, type NoteName } from '../../../shared/theory/pitch.ts';
import type { Position } from '../../../shared/theory/position.ts';
import { positionsOf } from '../../../shared/theory/positions.ts';
import type { PositionForm } from '../../../shared/theory/tables/position-names.ts';
import type { ToneSetId } from '../../../shared/theory/tone-sets.ts';
import { anyInstrument, anyRoot, anyTones } from './any-tones.ts';

const root = (text: string): NoteName => known(parseNoteName(text), text);
const spots = (position: Position): readonly Place[] => position.notes.map((note) => note.place);
const at = (places: readonly Place[]) => places.map((spot) => [spot.string, spot.fret]);

function form(name: PositionForm, tones: ToneSetId): Position {
  const positions = positionsOf(standardGuitar, root('F#'), tones);
  return known(
    positions.find((position) => position.form === name),
    name,
  );
}

describe('POSITION-8: from one position into the next', () => {
  // Source: computed; the pentatonic boxes with the root of F♯ on string 2 at fret 7 (common practice).
  test('boxes of a pentatonic share one place on each string, and slide on from it', () => {
    const { shared, slides } = joinOf(
      standardGuitar,
      form('D', 'minor-pentatonic'),
      form('C', 'minor-pentatonic'),
    );
    expect(at(shared).sort()).toEqual([
      [1, 7],
      [2, 7],
      [3, 6],
      [4, 7],
      [5, 7],
      [6, 7],
    ]);
    expect(slides.map(({ string, from, to }) => [string, from.fret, to.fret])).toEqual([
      [1, 7, 9],
      [2, 7, 10],
      [3, 6, 9],
      [4, 7, 9],
      [5, 7, 9],
      [6, 7, 9],
    ]);
  });

  test('back towards the nut it slides from the other end', () => {
    const { slides } = joinOf(standardGuitar, form('C', 'minor-pentatonic'), form('D', 'minor-pentatonic'));
    expect(slides.map(({ string, from, to }) => [string, from.fret, to.fret])).toEqual([
      [1, 7, 5],
      [2, 7, 5],
      [3, 6, 4],
      [4, 7, 4],
      [5, 7, 4],
      [6, 7, 5],
    ]);
  });

  test('positions far apart share nothing, and the slide is a long one', () => {
    const { shared, slides } = joinOf(
      standardGuitar,
      form('E', 'minor-pentatonic'),
      form('A', 'minor-pentatonic'),
    );
    expect(shared).toEqual([]);
    expect(slides[0]).toMatchObject({ string: 1, from: { fret: 5 }, to: { fret: 9 } });
  });

  test('a position and itself share everything and need no slide', () => {
    const position = form('C', 'major');
    expect(joinOf(standardGuitar, position, position)).toEqual({ shared: spots(position), slides: [] });
  });
});

test('POSITION-8: any two positions of any instrument', () => {
  const anyPair = fc
    .record({ neck: anyInstrument, one: anyRoot, tones: anyTones, a: fc.nat(), b: fc.nat() })
    .map(({ neck, one, tones, a, b }) => {
      const positions = positionsOf(neck, one, tones);
      return { neck, a: positions[a % positions.length], b: positions[b % positions.length] };
    });
  fc.assert(
    fc.property(anyPair, ({ neck, a, b }) => {
      if (!a || !b) return;
      const { shared, slides } = joinOf(neck, a, b);
      expect(shared).toEqual(spots(a).filter((spot) => holds(spots(b), spot)));
      // The other way round shares the same; the order of the notes means nothing.
      const back = joinOf(neck, b, a);
      expect(back.shared).toHaveLength(shared.length);
      expect(back.shared.every((spot) => holds(shared, spot))).toBe(true);
      const turned = joinOf(
        neck,
        { ...a, notes: [...a.notes].reverse() },
        { ...b, notes: [...b.notes].reverse() },
      );
      expect(turned.slides).toEqual(slides);
      expect(new Set(slides.map(({ string }) => string)).size).toBe(slides.length);
      const ways = slides.map(({ from, to }) => Math.sign(to.fret - from.fret));
      expect(new Set(ways).size).toBeLessThan(2);
      for (const { string, from, to } of slides) {
        expect([from.string, to.string]).toEqual([string, string]);
        expect(holds(spots(a), from)).toBe(true);
        expect(holds(spots(b), to)).toBe(true);
        expect(holds(spots(a), to)).toBe(false);
        // Nothing of the second position lies in between.
        const between = spots(b).filter(
          (spot) =>
            spot.string === string &&
            Math.min(from.fret, to.fret) < spot.fret &&
            spot.fret < Math.max(from.fret, to.fret),
        );
        expect(between).toEqual([]);
      }
    }),
  );
});
