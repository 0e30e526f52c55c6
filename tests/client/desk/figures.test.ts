import { describe, expect, test } from 'vitest';
import { viewAtLevel } from '../../../client/pages/desk/live/at-level.ts';
import { figuresOf, inOrder, isSettled, percent } from '../../../client/pages/desk/live/figures.ts';
import { commonSlip, heatMap } from '../../../client/pages/desk/live/slips.ts';
import { judge } from '../../../shared/exercise/judge.ts';
import type { DeskAnswerView, DeskStudentView, DeskView } from '../../../shared/protocol/views.ts';
import { place } from '../../../shared/theory/fretboard.ts';
import { deskView, findOn2, round } from './desk-view.ts';

const exercise = findOn2('C');

function answer(frets: readonly number[], fields: Partial<DeskAnswerView> = {}): DeskAnswerView {
  const places = frets.map((fret) => place(2, fret));
  const verdict = judge(exercise, { places });
  return { places, done: true, by: 'student', verdict, accepted: false, ...fields };
}

function student(name: string, fields: Partial<DeskStudentView> = {}): DeskStudentView {
  return {
    id: name as DeskStudentView['id'],
    name,
    seatNumber: null,
    alias: null,
    team: null,
    moreTime: 1,
    presence: 'here',
    answer: null,
    pattern: null,
    late: null,
    ...fields,
  };
}

function inPhase(phase: 'open' | 'held', students: readonly DeskStudentView[]): DeskView {
  return deskView({ stage: 'round', rounds: [round({ exercise, phase })], students });
}

// C on string 2 is fret 1 or 13; fret 8 is the C of string 6 (computed in standard tuning).
const students = [
  student('Right', { answer: answer([1]) }),
  student('Octave', { answer: answer([13]) }),
  student('Map', { answer: answer([8]) }),
  student('Map too', { answer: answer([8]) }),
  student('Placing', { answer: answer([2], { done: false }) }),
  student('Waiting'),
  student('Away', { presence: 'away' }),
  student('Absent', { presence: 'absent' }),
  student('No device', { presence: 'absent', answer: answer([1], { by: 'teacher' }) }),
  student('Late', { late: { ...answer([1]), counted: false } }),
];

describe('the three figures', () => {
  test('while open count what is done, of those here and those who answered', () => {
    expect(figuresOf(inPhase('open', students))).toEqual({ done: 5, of: 8, here: 7, right: 3, slips: 2 });
  });

  test('from the hold on count whatever was placed', () => {
    expect(figuresOf(inPhase('held', students))).toMatchObject({ done: 6, right: 3, slips: 3 });
  });

  test('an accepted answer and a late one that counts are right', () => {
    const taken = [
      student('Accepted', { answer: answer([8], { accepted: true }) }),
      student('Counted', { late: { ...answer([1]), counted: true } }),
    ];
    expect(figuresOf(inPhase('held', taken))).toMatchObject({ done: 2, right: 2, slips: 0 });
    expect(commonSlip(inPhase('held', taken))).toBeNull();
  });

  test('no per cent where nobody answered', () => {
    expect(percent(0, 0)).toBeNull();
    expect(percent(7, 12)).toBe(58);
  });
});

describe('LEVEL-4: levels are counted apart', () => {
  const harder = [findOn2('D')];
  const atSecond = (fret: number): DeskAnswerView => {
    const places = [place(2, fret)];
    return { ...answer([fret], { level: 2 }), verdict: judge(findOn2('D'), { places }) };
  };
  // D on string 2 is fret 3; fret 10 is the D of string 6 (computed in standard tuning).
  const asked = deskView({
    stage: 'round',
    rounds: [round({ exercise, harder, phase: 'held' })],
    students: [
      student('One', { answer: answer([1]) }),
      student('Two', { answer: answer([8]) }),
      student('Three', { answer: atSecond(10) }),
      student('Four', { answer: atSecond(10) }),
      student('Five', { answer: atSecond(3) }),
      student('Taken back', { answer: { ...atSecond(3), places: [] } }),
      student('Waiting'),
    ],
  });

  test('figures of all, and of each level those who answered it', () => {
    expect(figuresOf(asked)).toMatchObject({ done: 5, of: 7, right: 2 });
    expect(figuresOf(viewAtLevel(asked, 1))).toMatchObject({ done: 2, of: 2, right: 1 });
    expect(figuresOf(viewAtLevel(asked, 2))).toMatchObject({ done: 3, of: 3, right: 1 });
  });

  test('the commonest slip is that of one level, and says which', () => {
    expect(commonSlip(asked)).toMatchObject({ count: 2, name: expect.stringMatching(/^Second: /) as string });
    expect(commonSlip(viewAtLevel(asked, 1))).toMatchObject({ count: 1, cause: 'low-string-map' });
  });

  test('the map of one level has that level’s key, the map of all has none', () => {
    const expected = (view: DeskView) =>
      heatMap(view).flatMap((spot) => (spot.expected ? [spot.place.fret as number] : []));
    expect(expected(viewAtLevel(asked, 1))).toContain(1);
    expect(expected(viewAtLevel(asked, 2))).toContain(3);
    expect(expected(viewAtLevel(asked, 2))).not.toContain(1);
    expect(expected(asked)).toEqual([]);
    expect(heatMap(asked)).toHaveLength(4);
  });
});

test('advice waits for the hold, or for all', () => {
  expect(isSettled(inPhase('open', students))).toBe(false);
  expect(isSettled(inPhase('held', students))).toBe(true);
  expect(isSettled(inPhase('open', students.slice(0, 4)))).toBe(true);
  expect(isSettled(inPhase('held', [student('Waiting')]))).toBe(false);
});

test('slips stand first, who is not there last', () => {
  expect(inOrder(students, true).map(({ student: { name }, standing }) => `${name}: ${standing}`)).toEqual([
    'Map: slip',
    'Map too: slip',
    'Late: late',
    'No device: right',
    'Octave: right',
    'Right: right',
    'Placing: placing',
    'Waiting: waiting',
    'Away: away',
    'Absent: absent',
  ]);
});

test('the commonest slip is named with its count and one slur', () => {
  const slip = commonSlip(inPhase('open', students));
  expect(slip).toMatchObject({ cause: 'low-string-map', count: 2 });
  expect(slip?.corrections).toEqual([{ from: place(2, 8), to: place(2, 1) }]);
});

test('the map counts answers, and keeps what is expected where nobody is', () => {
  const spots = heatMap(inPhase('open', [student('Map', { answer: answer([8]) })]));
  expect(spots).toContainEqual({ place: place(2, 8), count: 1, share: 1, expected: false, root: false });
  expect(spots).toContainEqual({ place: place(2, 1), count: 0, share: 0, expected: true, root: true });
  expect(spots).toContainEqual({ place: place(2, 13), count: 0, share: 0, expected: true, root: true });
});
