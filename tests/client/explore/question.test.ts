import { describe, expect, it } from 'vitest';
import { firstIdeas, type Ideas } from '../../../client/pages/explore/ideas.ts';
import { questionOf, type Scope } from '../../../client/pages/explore/question.ts';
import { firstOf, from, seenFrom } from '../../../client/pages/explore/seen.ts';
import { countWords } from '../../../client/pages/explore/words.ts';
import { checkExercise } from '../../../shared/exercise/check.ts';
import type { Exercise } from '../../../shared/exercise/exercise.ts';
import { judge } from '../../../shared/exercise/judge.ts';
import { answerKey } from '../../../shared/exercise/key.ts';
import { rightName } from '../../../shared/exercise/name-words.ts';
import { place, standardGuitar } from '../../../shared/theory/fretboard.ts';
import { Random } from '../../support/random.ts';

function seeded(seed: number): () => number {
  const random = new Random(seed);
  return () => random.next();
}

const ask = (change: Partial<Ideas>, scope: Scope, before: Exercise | null = null, seed = 1) => {
  const ideas = { ...firstIdeas, ...change };
  const at = from(standardGuitar, place(2, 5), ideas);
  const all = seenFrom(at, ideas);
  return questionOf(at, ideas, all[firstOf(all)], scope, before, seeded(seed));
};

describe('a quiz with oneself', () => {
  it('asks what is seen, as it is', () => {
    expect(ask({}, 'this')).toMatchObject({
      kind: 'build',
      quality: 'minor',
      rootString: 2,
      range: { low: 5, high: 5 },
    });
    expect(ask({ kind: 'pentatonic' }, 'this')).toMatchObject({ kind: 'scale', scale: 'minor-pentatonic' });
  });

  it('asks the same shape on the same string from other roots, never one twice in a row', () => {
    const frets = new Set<number>();
    let before: Exercise | null = null;
    for (let seed = 1; seed <= 60; seed += 1) {
      const next = ask({}, 'any', before, seed);
      expect(next).toMatchObject({ kind: 'build', rootString: 2, voicing: { kind: 'form', form: 'C' } });
      expect(next?.range?.low).not.toBe(before?.range?.low);
      expect(next?.root).not.toEqual(before?.root);
      frets.add(next?.range?.low ?? -1);
      before = next ?? null;
    }
    expect(frets.size).toBeGreaterThan(3);
  });

  it('asks on a map what a place is of the root, and never the root itself', () => {
    for (const scope of ['this', 'any'] as const)
      for (let seed = 1; seed <= 20; seed += 1) {
        const next = ask({ kind: 'map' }, scope, null, seed);
        if (next?.kind !== 'name') throw new Error('no place is asked');
        expect(checkExercise(next).ok).toBe(true);
        expect(rightName(next)).not.toEqual({ kind: 'degree', degree: '1' });
        expect(judge(next, { places: [], named: rightName(next) }).kind).toBe('right');
      }
  });

  it('asks only what can be judged, and takes its own chart as right', () => {
    for (const kind of ['chord', 'pentatonic', 'scale'] as const)
      for (let seed = 1; seed <= 8; seed += 1) {
        const next = ask({ kind }, 'any', null, seed);
        if (!next) throw new Error('nothing is asked');
        expect(checkExercise(next).ok).toBe(true);
        const places = answerKey(next).map((note) => note.place);
        expect(judge(next, { places }).kind).toBe('right');
      }
  });

  it('asks nothing where nothing is seen', () => {
    const at = from(standardGuitar, place(2, 5), firstIdeas);
    expect(questionOf(at, firstIdeas, undefined, 'any', null, seeded(1))).toBeUndefined();
  });

  it('counts plainly what was right', () => {
    expect(countWords({ right: 0, asked: 0 })).toBe('');
    expect(countWords({ right: 2, asked: 3 })).toBe('2 of 3 right');
  });
});
