import { expect, test } from 'vitest';
import { shownName } from '../../../client/pages/desk/live/shown-name.ts';
import { goesByTurns, nextTurn } from '../../../client/pages/desk/live/turns.ts';
import type { DeskStudentView } from '../../../shared/protocol/views.ts';
import { name as nameAt } from '../../support/exercises.ts';
import { deskView, findOn2, round } from './desk-view.ts';

function student(name: string, fields: Partial<DeskStudentView> = {}): DeskStudentView {
  return {
    id: name as DeskStudentView['id'],
    ...{ name, seatNumber: null, alias: null, team: null, moreTime: 1, presence: 'here' },
    ...{ answer: null, pattern: null, late: null },
    ...fields,
  };
}

const students = [
  student('Ansel'),
  student('Brida', { presence: 'absent' }),
  student('Corin', { seatNumber: 7 }),
  student('Delphy', { presence: 'away' }),
  student('Edda'),
];
const withTurn = (name: string | null) => deskView({ students, turn: name as DeskStudentView['id'] | null });

test.each([
  [null, 'Ansel'],
  ['Ansel', 'Corin'],
  ['Corin', 'Edda'],
  ['Edda', null],
  // Given by hand to somebody who went out of touch since.
  ['Delphy', 'Edda'],
  // Whoever is not on the register any more.
  ['Gone', 'Ansel'],
])('TURN-4: after %s the next turn is that of %s', (before, next) => {
  expect(nextTurn(withTurn(before))).toBe(next);
});

test('TURN-4: where nobody is here it is nobody’s turn', () => {
  const away = students.map((one): DeskStudentView => ({ ...one, presence: 'away' }));
  expect(nextTurn(deskView({ students: away }))).toBeNull();
});

test('TURN-2: turns are there only while the class lasts and plays by turns', () => {
  const { settings } = deskView({});
  expect(goesByTurns(deskView({}))).toBe(false);
  for (const playing of ['off', 'turns', 'on'] as const)
    expect(goesByTurns(deskView({ settings: { ...settings, playing } }))).toBe(playing === 'turns');
  expect(goesByTurns(deskView({ settings: { ...settings, playing: 'turns' }, closed: true }))).toBe(false);
});

test('turns are not there while a name is asked, unless another level can be played', () => {
  const { settings } = deskView({});
  const asked = (fields: Parameters<typeof round>[0]) =>
    deskView({ settings: { ...settings, playing: 'turns' }, stage: 'round', rounds: [round(fields)] });
  expect(goesByTurns(asked({}))).toBe(true);
  expect(goesByTurns(asked({ exercise: nameAt('E', 5) }))).toBe(false);
  expect(goesByTurns(asked({ exercise: nameAt('E', 5), harder: [findOn2('D')] }))).toBe(true);
});

test('with names hidden whose turn it is goes by seat or number', () => {
  const view = withTurn(null);
  const shown = (hiding: boolean) => students.map((one) => shownName(view, one, hiding));
  expect(shown(false)).toEqual(['Ansel', 'Brida', 'Corin', 'Delphy', 'Edda']);
  expect(shown(true)).toEqual(['Student 1', 'Student 2', 'Seat 7', 'Student 4', 'Student 5']);
});
