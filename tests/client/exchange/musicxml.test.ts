import { describe, expect, test } from 'vitest';
import { readMusicXml } from '../../../client/exchange/musicxml-in.ts';
import { musicXmlOf } from '../../../client/exchange/musicxml-out.ts';
import { chartWordings } from '../../../shared/exercise/chart.ts';
import { checkExercise } from '../../../shared/exercise/check.ts';
import type { BuildExercise, Exercise } from '../../../shared/exercise/exercise.ts';
import { answerKey } from '../../../shared/exercise/key.ts';
import { builtAt, proposalsFrom } from '../../../shared/exercise/proposals.ts';
import { course } from '../../../shared/plans/course.ts';
import { known } from '../../../shared/lib/assert.ts';
import { mostPlanned } from '../../../shared/protocol/plans.ts';
import { qualityIds } from '../../../shared/theory/chord-name.ts';
import { instrumentById, standardGuitar, type StringNumber } from '../../../shared/theory/fretboard.ts';
import { parseNoteName } from '../../../shared/theory/pitch.ts';
import { everyString, rootPlaces } from '../../../shared/theory/root-places.ts';
import { formTable } from '../../../shared/theory/tables/forms.ts';
import { build, find, name, scale } from '../../support/exercises.ts';
import { schemaErrors } from './musicxml-schema.ts';

const roots = ['C', 'Eb', 'F#', 'B'].map((text) => known(parseNoteName(text), text));
const necks: readonly (readonly [id: string, root: string])[] = [
  ['guitar', 'C'],
  ['guitar', 'B'],
  ['guitar-drop-d+capo=2', 'F#'],
  ['guitar-7', 'F#'],
  ['bass-5', 'Eb'],
  ['ukulele', 'C'],
  ['mandolin', 'Eb'],
  ['custom:D4-B3-G3-D3-G4+frets=22', 'C'],
];
const reader = { instrument: standardGuitar, naming: 'english' } as const;

function write(exercises: readonly Exercise[], title = 'Round trip'): string {
  return musicXmlOf({ title, exercises, naming: 'english' });
}

/** What a reader of a chart sees: places, fingers, the roots among them, and the words over it. */
function chartOf(exercise: Exercise) {
  const notes = answerKey(exercise)
    .map(({ place, finger, degree }) => ({ ...place, finger, degree }))
    .sort((a, b) => b.string - a.string);
  return { notes, title: chartWordings(exercise).english.title };
}

function readBack(exercises: readonly BuildExercise[]) {
  const read = readMusicXml(write(exercises), reader);
  if (!read.ok) throw new Error(read.error);
  return read.value;
}

/** Every form on every one of its root strings, on each root where it can be asked. */
const forms = formTable.flatMap(({ form, quality, rootStrings }) =>
  rootStrings.flatMap((string) =>
    roots.flatMap((root) =>
      rootPlaces(standardGuitar, root, string as StringNumber).map((place) =>
        builtAt({ instrument: standardGuitar, root, place }, quality, { kind: 'form', form, full: false }),
      ),
    ),
  ),
);

/** What can be proposed for a quality, from the lowest root on each string: forms, families and the easiest. */
function proposed(id: string, named: string, quality: BuildExercise['quality']): readonly BuildExercise[] {
  const instrument = known(instrumentById(id), id);
  const root = known(parseNoteName(named), named);
  return everyString(instrument, root)
    .flatMap((places) => places.slice(0, 1))
    .flatMap((place) => proposalsFrom({ instrument, root, place }, { kind: 'chord', quality }))
    .flatMap(({ exercise }) => (exercise.kind === 'build' ? [exercise] : []));
}

describe('EXCHANGE-2: a chart that was written comes back as the same chart', () => {
  test('every form, on every root string', () => {
    const asked = forms.filter((exercise) => checkExercise(exercise).ok);
    expect(new Set(asked.map(({ voicing, quality }) => JSON.stringify([voicing, quality]))).size).toBe(
      formTable.length,
    );
    for (let at = 0; at < asked.length; at += mostPlanned) {
      const some = asked.slice(at, at + mostPlanned);
      const { charts, refused } = readBack(some);
      expect(refused).toEqual([]);
      expect(charts.map(({ exercise }) => chartOf(exercise))).toEqual(some.map(chartOf));
      expect(charts.map(({ exercise }) => exercise.rootString)).toEqual(
        some.map(({ rootString }) => rootString),
      );
    }
  });

  test.each(necks)('every quality that can be asked, on %s from %s; and it is valid', async (id, root) => {
    const asked = qualityIds.flatMap((quality) => proposed(id, root, quality));
    expect(asked.length).toBeGreaterThan(50);
    expect(await schemaErrors(write(asked))).toEqual([]);
    for (let at = 0; at < asked.length; at += mostPlanned) {
      const some = asked.slice(at, at + mostPlanned);
      const { charts, refused } = readBack(some);
      expect(refused).toEqual([]);
      expect(charts.map(({ exercise }) => chartOf(exercise))).toEqual(some.map(chartOf));
    }
  });
});

describe('EXCHANGE-1: what is written is MusicXML 4.0', () => {
  test('the whole course', async () => {
    const exercises = course.flatMap((plan) => plan.exercises.map(({ exercise }) => exercise));
    expect(await schemaErrors(write(exercises, 'A < B & "C"'))).toEqual([]);
  });

  test('every form', async () => {
    expect(await schemaErrors(write(forms.filter((exercise) => checkExercise(exercise).ok)))).toEqual([]);
  });

  test('other kinds of exercise, and a plan without any', async () => {
    const exercises = [find('D'), find('A', { wanted: 'every' }), name('Bb', 11), scale('E', 'dorian', 1, 5)];
    expect(await schemaErrors(write(exercises))).toEqual([]);
    expect(await schemaErrors(write([]))).toEqual([]);
  });
});

describe('EXCHANGE-1: the schema refuses what is not', () => {
  const good = write([build('E', 'm7', { voicing: { kind: 'form', form: 'C', full: false } })]);
  const broken: readonly (readonly [string, (document: string) => string])[] = [
    ['an unknown kind', (document) => document.replace('>minor-seventh<', '>minor-7<')],
    [
      'elements in another order',
      (document) => document.replace(/(<fret>\d+<\/fret>)(\s*)(<fingering>\d<\/fingering>)/, '$3$2$1'),
    ],
    [
      'a frame that doesn’t say its strings',
      (document) => document.replace(/<frame-strings>.*?<\/frame-strings>/, ''),
    ],
    ['an unknown element', (document) => document.replace('<frame-frets>', '<mood>calm</mood><frame-frets>')],
    ['an unknown attribute', (document) => document.replace('<kind ', '<kind mood="calm" ')],
    ['an octave beyond 9', (document) => document.replace(/<octave>\d/, '<octave>10')],
    ['a string 0', (document) => document.replace(/<string>\d/, '<string>0')],
  ];
  test.each(broken)('%s', async (_, breakIt) => {
    expect(await schemaErrors(good)).toEqual([]);
    expect(breakIt(good)).not.toBe(good);
    expect(await schemaErrors(breakIt(good))).not.toEqual([]);
  });
});
