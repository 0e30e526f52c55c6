import { describe, expect, it } from 'vitest';
import {
  ideaChoices,
  ideaKinds,
  firstIdeas,
  maps,
  rootAt,
  type Ideas,
} from '../../../client/pages/explore/ideas.ts';
import { instrumentById, place, standardGuitar } from '../../../shared/theory/fretboard.ts';
import { formatNoteName } from '../../../shared/theory/pitch.ts';

describe('what is looked for round a root', () => {
  it('offers for each kind the one that is chosen at first, and no choice twice', () => {
    for (const [kind] of ideaKinds) {
      const { choices, groups } = ideaChoices[kind];
      const values = [...choices, ...groups.flatMap((group) => group.choices)].map(([value]) => value);
      expect(values, kind).toContain(firstIdeas[kind]);
      expect(new Set(values).size, kind).toBe(values.length);
    }
    expect(Object.keys(maps)).toHaveLength(ideaChoices.map.choices.length);
  });

  it('names the root as a teacher would write it for what is looked for', () => {
    // Fret 4 of string 2 sounds D♯ or E♭: E♭ major has three flats, D♯ major nine sharps (circle of fifths).
    const spot = place(2, 4);
    const named = (ideas: Partial<Ideas>) =>
      formatNoteName(rootAt(standardGuitar, spot, { ...firstIdeas, ...ideas }));
    expect(named({ kind: 'scale', scale: 'major' })).toBe('Eb');
    expect(named({ kind: 'map', map: 'major' })).toBe('Eb');
    // Fret 2 of string 2 sounds C♯ or D♭: C♯ minor has four sharps, D♭ minor eight flats.
    const lower = rootAt(standardGuitar, place(2, 2), { ...firstIdeas, kind: 'scale' });
    expect(formatNoteName(lower)).toBe('C#');
  });

  it('counts from a capo, as the neck does', () => {
    const capo = instrumentById('guitar+capo=2');
    // String 2 open is B; two frets higher it is C♯.
    expect(capo && formatNoteName(rootAt(capo, place(2, 0), firstIdeas))).toBe('C#');
  });
});
