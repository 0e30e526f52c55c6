import { describe, expect, test } from 'vitest';
import { viewAtLevel } from '../../../client/pages/desk/live/at-level.ts';
import { figuresOf, inOrder, isSettled, percent } from '../../../client/pages/desk/live/figures.ts';
import { commonSlip, partlyShown, heatMap } from '../../../client/pages/desk/live/slips.ts';
import { asDrawn } from '../../../client/pages/desk/live/played.ts';
import { cameBy, tellsWays, waysText } from '../../../client/pages/desk/live/ways.ts';
import { judge } from '../../../shared/exercise/judge.ts';
import type { DeskAnswerView, DeskStudentView, DeskView } from '../../../shared/protocol/views.ts';
import { place } from '../../../shared/theory/fretboard.ts';
import type { MidiNote } from '../../../shared/theory/pitch.ts';
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

describe('TURN-5, TURN-6: played answers', () => {
  const line = (pitch: number) =>
    ({ kind: 'line', pitches: [{ pitch: pitch as MidiNote, at: 0, confidence: 0.9 }] }) as const;
  /** Played, with these frets of string 2 tapped besides. */
  const played = (frets: readonly number[], fields: Partial<DeskAnswerView> = {}) =>
    answer(frets, { heard: line(60), way: 'play', ...fields });
  const slip: DeskAnswerView['verdict'] = {
    kind: 'slip',
    cause: 'low-string-map',
    marks: [],
    corrections: [],
    missing: [],
  };

  test('lie on the map where they were tapped and nowhere else, and count among no others', () => {
    const view = inPhase('held', [
      student('Tapped', { answer: answer([1]) }),
      student('Root tapped', { answer: played([1]) }),
      student('Heard alone', { answer: played([], { verdict: { kind: 'right' } }) }),
    ]);
    expect(figuresOf(view)).toMatchObject({ done: 3, right: 3 });
    expect(heatMap(view).filter(({ count }) => count > 0)).toEqual([
      { place: place(2, 1), count: 2, share: 1, expected: true, root: true },
    ]);
    // Of a note that was to be found, pitch and string are the place.
    expect(partlyShown(view)).toBe(1);
    const chord = { ...exercise, kind: 'build', quality: 'minor', voicing: { kind: 'any' } } as const;
    const asked = deskView({ ...view, rounds: [round({ exercise: chord, phase: 'held' })] });
    expect(partlyShown(asked)).toBe(2);
  });

  test('a note to be found lies where the tapped string has it, wherever on it the tap was', () => {
    // C4, MIDI 60, is string 2, fret 1 (computed in standard tuning).
    const view = inPhase('held', [student('Tapped above', { answer: played([9]) })]);
    expect(heatMap(view).filter(({ count }) => count > 0)).toMatchObject([{ place: place(2, 1), count: 1 }]);
    // G4, MIDI 67, is fret 8: the C of string 6.
    const drawn = asDrawn(exercise, played([3], { heard: line(67) }));
    expect(drawn.places).toEqual([place(2, 8)]);
    expect(drawn.verdict).toMatchObject({ cause: 'low-string-map', corrections: [{ to: place(2, 1) }] });
    expect(asDrawn(exercise, played([]))).toEqual(played([]));
  });

  test('don’t lend the commonest slip its example while a tapped one shows it', () => {
    const both = inPhase('held', [
      student('Heard', { answer: played([], { verdict: slip }) }),
      student('Tapped', { answer: answer([8]) }),
    ]);
    expect(commonSlip(both)).toMatchObject({ cause: 'low-string-map', count: 2 });
    expect(commonSlip(both)?.corrections).toEqual([{ from: place(2, 8), to: place(2, 1) }]);
    const alone = inPhase('held', [student('Heard', { answer: played([], { verdict: slip }) })]);
    expect(commonSlip(alone)).toMatchObject({ count: 1, corrections: [] });
    expect(commonSlip(alone)?.line).toMatch(/^\S.*\.$/);
  });

  test('are told apart by how they came, in words and numbers', () => {
    const view = inPhase('held', [
      student('One', { answer: played([1]) }),
      student('Two', { answer: played([]) }),
      student('Three', { answer: answer([1], { way: 'midi' }) }),
      student('Four', { answer: answer([1]) }),
      student('Five', { answer: answer([1], { by: 'teacher' }) }),
      student('Waiting'),
    ]);
    expect(waysText(view)).toBe('2 played, 1 by MIDI, 1 tapped, 1 entered');
    expect(waysText(inPhase('held', [student('Four', { answer: answer([1]) })]))).toBe('');
    expect(cameBy(answer([1], { by: 'teacher', way: 'play' }))).toBe('entered');
  });

  test('the way is shown where the class may play, or somebody did', () => {
    const tapped = inPhase('held', [student('Four', { answer: answer([1]) })]);
    expect(tellsWays(tapped)).toBe(false);
    for (const playing of ['turns', 'on'] as const)
      expect(tellsWays({ ...tapped, settings: { ...tapped.settings, playing } })).toBe(true);
    expect(tellsWays(inPhase('held', [student('Late', { late: { ...played([]), counted: false } })]))).toBe(
      true,
    );
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
