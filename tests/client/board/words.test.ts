import { describe, expect, test } from 'vitest';
import {
  announcement,
  codeGroups,
  codeInPath,
  joinLink,
  percent,
  placeLine,
  timeInWords,
  typedAddress,
} from '../../../client/pages/board/words.ts';
import type { Exercise } from '../../../shared/exercise/exercise.ts';
import type { ClassCode } from '../../../shared/protocol/ids.ts';
import type { BoardStage, BoardView, RevealView, TaskView } from '../../../shared/protocol/views.ts';
import { place, type StringNumber } from '../../../shared/theory/fretboard.ts';

describe('the way in', () => {
  test('a code is read in two groups of three', () => {
    expect(codeGroups('BKDFHR')).toEqual(['BKD', 'FHR']);
  });

  test.each([
    ['/board', ''],
    ['/board/', ''],
    ['/board/bkdfhr', 'BKDFHR'],
    ['/board/BKD%20FHR', 'BKDFHR'],
    ['/desk/BKDFHR', ''],
  ])('the code in %s is "%s"', (path, code) => {
    expect(codeInPath(path)).toBe(code);
  });

  test.each([
    ['http://192.168.1.20:8080', '192.168.1.20:8080'],
    ['http://192.168.1.20:8080/', '192.168.1.20:8080'],
    ['https://rootcall.example', 'rootcall.example'],
    // Without its scheme a phone would try plain HTTP on that port.
    ['https://192.168.1.20:8443', 'https://192.168.1.20:8443'],
  ])('%s is typed as %s', (address, typed) => {
    expect(typedAddress(address)).toBe(typed);
  });

  test('the QR picture carries address and code', () => {
    expect(joinLink('http://192.168.1.20:8080/', 'BKDFHR')).toBe('http://192.168.1.20:8080/join/BKDFHR');
  });
});

describe('figures', () => {
  test.each([
    [7, 12, 58],
    [0, 12, 0],
    [12, 12, 100],
    [0, 0, 0],
  ])('%i of %i is %i %%', (right, of, share) => {
    expect(percent({ right, of })).toBe(share);
  });

  test.each([
    [1, '1 second'],
    [45, '45 seconds'],
    [60, '1 minute'],
    [61, '1 minute 1 second'],
    [90, '1 minute 30 seconds'],
    [300, '5 minutes'],
  ])('%i s is %s', (seconds, words) => {
    expect(timeInWords(seconds)).toBe(words);
  });
});

describe('where the root lies', () => {
  const task = {
    instrument: 'guitar',
    root: { letter: 'C', alteration: 0 },
    rootString: 2 as StringNumber,
    strictness: 'string',
    range: null,
  } as const;
  const find: Exercise = { kind: 'find', ...task };
  const build: Exercise = {
    kind: 'build',
    ...task,
    quality: 'minor',
    voicing: { kind: 'form', form: 'triad-321', full: false },
  };
  const roots = (...places: readonly (readonly [number, number])[]): RevealView['notes'] =>
    places.map(([string, fret]) => ({ place: place(string, fret), degree: '1' }));

  // C on string 2 is fret 1 or 13: B3 is the open string (MIDI 59, C4 = 60; MIDI 1.0).
  test('both places of a found note are said', () => {
    expect(placeLine({ exercise: find, notes: roots([2, 1], [2, 13]) }, 'english')).toBe(
      'String 2, fret 1 or fret 13.',
    );
  });

  test('a note found all over the neck is left to the chart', () => {
    expect(placeLine({ exercise: find, notes: roots([2, 1], [3, 5], [5, 3]) }, 'english')).toBeNull();
  });

  test.each([
    ['note', 'String 3, fret 4: si.'],
    ['interval', 'String 3, fret 4: major seventh above do.'],
    ['degree', 'String 3, fret 4: 7 of do.'],
  ] as const)('of a place to be named, its %s is said in the group’s note names', (wanted, line) => {
    // B3 is string 3, fret 4 (G3 = 55, B3 = 59), a major seventh above C.
    const root = { letter: wanted === 'note' ? 'B' : 'C', alteration: 0 } as const;
    const name: Exercise = {
      ...task,
      root,
      rootString: 3 as StringNumber,
      kind: 'name',
      place: place(3, 4),
      wanted,
    };
    expect(placeLine({ exercise: name, notes: [] }, 'solfege')).toBe(line);
  });

  test('of a chord, the root on its root string is said, other roots are not', () => {
    expect(placeLine({ exercise: build, notes: roots([2, 5], [4, 2]) }, 'english')).toBe(
      'Root on string 2, fret 5.',
    );
    expect(placeLine({ exercise: build, notes: roots([2, 0]) }, 'english')).toBe('Root on string 2, open.');
  });
});

describe('what is said aloud', () => {
  const view = (stage: BoardStage): BoardView => ({
    group: 'Thursday Strings',
    school: 'Alderwick Community Music School',
    code: 'BKDFHR' as ClassCode,
    address: 'http://192.168.1.20:8080',
    instrument: 'guitar',
    naming: 'english',
    here: 9,
    next: null,
    stage,
  });
  const words = { title: 'Build E minor', detail: 'Root on string 2.' };
  const task: TaskView = {
    wording: { english: words, german: words, solfege: { ...words, title: 'Build mi minor' } },
    instrument: 'guitar',
    input: {
      kind: 'places',
      perString: 'one',
      ordered: false,
      marksRoot: false,
      asksFinger: false,
      playing: null,
    },
    range: null,
  };
  const open = (done: number): BoardStage => ({
    kind: 'open',
    task,
    harder: [],
    rootString: 2,
    seconds: null,
    done,
    of: 14,
  });

  test('a round is announced once, not anew with each student who is done', () => {
    expect(announcement(view(open(3)))).toBe('Asked: Build E minor. Root on string 2.');
    expect(announcement(view(open(4)))).toBe(announcement(view(open(3))));
  });

  test('a round is announced in the group’s note names', () => {
    expect(announcement({ ...view(open(3)), naming: 'solfege' })).toContain('Build mi minor');
  });

  test('LEVEL-3: all levels are announced', () => {
    const harder = [
      { ...task, wording: { ...task.wording, english: { title: 'Find D', detail: 'Anywhere.' } } },
    ];
    expect(announcement(view({ ...open(0), harder } as BoardStage))).toBe(
      'Asked: First: Build E minor. Root on string 2. Second: Find D. Anywhere.',
    );
  });

  test('the hold is announced', () => {
    expect(announcement(view({ ...open(4), kind: 'held' } as BoardStage))).toBe('Held.');
  });
});
