import { expect, test } from 'vitest';
import { fingeringProblem, fingeringsOf } from '../../../shared/theory/fingering.ts';
import { standardGuitar } from '../../../shared/theory/fretboard.ts';
import { counts } from '../counts.ts';
import { placesOf } from './chord-cases.ts';
import data from './fingerings.json' with { type: 'json' };

// Source: fingerings.json: positions of chords-db 0.5.1 (MIT, © 2016 David Rubert) and mutations of them.
const cases = data.cases.map((one) => [one.id, one] as const);

test('they are all here, on a guitar in standard tuning', () => {
  expect(cases).toHaveLength(counts['fingerings.json'].cases);
  expect(cases.every(([, { tuning }]) => tuning.name === 'standard')).toBe(true);
});

test.each(cases)(
  'HAND-3: %s, nothing is said of a playable fingering, something of any other',
  (_id, one) => {
    const given = one.frets.map((fret, at) => ({
      place: { string: one.frets.length - at, fret },
      finger: one.fingers[at] ?? 0,
    }));
    expect(fingeringProblem(standardGuitar, given) === undefined).toBe(one.verdict === 'playable');
  },
);

test.each(cases.filter(([, { verdict }]) => verdict === 'playable'))(
  'HAND-2: %s is among the fingerings of its places, its barres too',
  (_id, { frets, fingers, barres }) => {
    const found = fingeringsOf(standardGuitar, placesOf(frets));
    const wanted = fingers.filter((_, at) => frets[at] !== null);
    const own = found.ok
      ? found.value.find((one) => one.fingers.every(({ finger }, at) => finger === wanted[at]))
      : undefined;
    expect(own?.barre.map(({ finger, fret, strings }) => [finger, fret, ...strings])).toEqual(
      barres.map(({ finger, fret, fromString, toString }) => [finger, fret, fromString, toString]),
    );
  },
);
