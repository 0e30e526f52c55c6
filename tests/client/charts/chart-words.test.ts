import { describe, expect, test } from 'vitest';
import { chartInWords } from '../../../client/charts/chart-words.ts';
import { fileName } from '../../../client/charts/file-name.ts';
import { chartNotes } from '../../../shared/exercise/chart.ts';
import { build, find, name, scale } from '../../support/exercises.ts';
import { allCharts } from './all-charts.ts';

describe('CHART-4 a chart in words, from the lowest string on', () => {
  test('a chord: place, degree, finger, what may stay silent and what does', () => {
    const eMinor = build('E', 'minor', { voicing: { kind: 'form', form: 'C', full: false } });
    expect(chartInWords(eMinor, 'english')).toEqual([
      'string 6, silent',
      'string 5, fret 7, root, finger 4, may stay silent',
      'string 4, fret 5, minor third, finger 2',
      'string 3, fret 4, perfect fifth, finger 1',
      'string 2, fret 5, root, finger 3',
      'string 1, silent',
    ]);
  });

  test('a scale string by string', () => {
    expect(chartInWords(scale('E', 'minor-pentatonic', 1, 5), 'english').slice(0, 2)).toEqual([
      'string 6: fret 5, perfect fourth, finger 1; fret 7, perfect fifth, finger 3',
      'string 5: fret 5, minor seventh, finger 1; fret 7, root, finger 3',
    ]);
  });

  test('an open string, a note to be found everywhere, a place by its name in the reader’s naming', () => {
    expect(chartInWords(find('B'), 'english')).toEqual(['string 2: open, root; fret 12, root']);
    expect(chartInWords(name('F#', 7), 'german')).toEqual(['string 2, fret 7, Fis']);
    const heard = (root: string, wanted: 'degree' | 'interval') =>
      chartInWords(name(root, 7, { wanted }), 'english');
    expect(heard('F#', 'degree')).toEqual(['string 2, fret 7, root']);
    expect(heard('D#', 'interval')).toEqual(['string 2, fret 7, minor third']);
  });

  test('every note of every chart is said once', () => {
    for (const chart of allCharts) {
      if (chart.kind === 'name') continue;
      const said = chartInWords(chart, 'english').flatMap((words) => {
        const string = /^string (\d+)/.exec(words)?.[1] ?? '';
        return [...words.matchAll(/fret (\d+)|open/g)].map(([, fret = '0']) => `${string} ${fret}`);
      });
      const wanted = chartNotes(chart).map(({ place }) => `${String(place.string)} ${String(place.fret)}`);
      expect(said.toSorted()).toEqual(wanted.toSorted());
    }
  });
});

describe('CHART-7 the file’s name', () => {
  test.each([
    ['E minor, C form', 'e-minor-c-form.svg'],
    ['F♯m7♭5 arpeggio', 'f-sharp-m7-flat-5-arpeggio.svg'],
    ['../Überübung: “1/2”?', 'uberubung-1-2.svg'],
    ['音階', 'chart.svg'],
    ['', 'chart.svg'],
    [`${'long '.repeat(20)}`, `${'long-'.repeat(12).slice(0, -1)}.svg`],
  ])('%s', (words, wanted) => {
    expect(fileName(words, 'svg')).toBe(wanted);
  });
});
