import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { PlacedAnswer } from '../../server/classroom/state.ts';
import type { Store } from '../../server/store/store.ts';
import { known } from '../../shared/lib/assert.ts';
import type { SendId, StudentId } from '../../shared/protocol/ids.ts';
import { answer, classId, fillStore, groupId, round, seat, student, time } from './store/samples.ts';
import { tempPlace, type TempPlace } from './store/temp-place.ts';

const from = 'from' as StudentId;
const into = 'into' as StudentId;
let where: TempPlace;
let store: Store;

beforeEach(async () => {
  where = tempPlace();
  store = await where.open();
  await fillStore(store);
  await store.groups.saveStudent(groupId, student('from'));
  await store.groups.saveStudent(groupId, student('into'));
  await store.classes.commit(classId, [{ kind: 'round', round: round('r1') }]);
});
afterEach(async () => {
  await store.close();
  await where.remove();
});

/** An answer whose send says whose it was. */
const given = (by: StudentId, at: number, fields: Partial<PlacedAnswer> = {}, late = false) =>
  answer('r1', by, { at: time(at), sendId: `${by} ${String(at)}` as SendId, ...fields }, late);

const state = async () => known(await store.classes.load(classId), 'class');

async function kept() {
  const [only] = (await state()).rounds;
  const { answers, late } = known(only, 'round');
  expect([...answers.keys(), ...late.keys()].every((id) => id === into)).toBe(true);
  return { inTime: answers.get(into)?.sendId, late: late.get(into)?.sendId };
}

describe('SEAT-7: of two students’ answers to a round the one counted later stays', () => {
  test.each([
    ['only the first answered', [given(from, 1)], { inTime: 'from 1' }],
    ['only the second answered', [given(into, 1)], { inTime: 'into 1' }],
    ['the first answered later', [given(from, 2), given(into, 1)], { inTime: 'from 2' }],
    ['the second answered later', [given(from, 1), given(into, 2)], { inTime: 'into 2' }],
    ['both at once', [given(from, 1), given(into, 1)], { inTime: 'into 1' }],
    [
      'what is late and not counted is no rival',
      [given(from, 1), given(into, 9, {}, true)],
      { inTime: 'from 1' },
    ],
    [
      'what is late and counted is one',
      [given(from, 1), given(into, 9, { counted: true }, true)],
      { late: 'into 9' },
    ],
    [
      'an answer and its late one stay together',
      [given(from, 3), given(from, 9, {}, true), given(into, 2)],
      { inTime: 'from 3', late: 'from 9' },
    ],
    [
      'what was taken back whole is no rival',
      [given(from, 1), given(into, 9, { places: [] })],
      { inTime: 'from 1' },
    ],
    [
      'what was heard without a place is one',
      [given(from, 1), given(into, 9, { places: [], heard: { kind: 'chord', tones: [] } })],
      { inTime: 'into 9' },
    ],
    [
      'what the teacher marked is one',
      [given(from, 1), given(into, 9, { places: [], teacherSays: 'right' })],
      { inTime: 'into 9' },
    ],
  ] as const)('%s', async (_what, answers, expected) => {
    await store.classes.commit(classId, answers);
    await store.groups.mergeStudents(from, into);
    expect(await kept()).toEqual({ inTime: undefined, late: undefined, ...expected });
    expect((await store.groups.students(groupId)).map(({ id }) => id)).toEqual([into]);
  });

  test('seats follow, those that were sent away too; of two devices in a class the later one stays', async () => {
    await store.classes.commit(classId, [
      {
        kind: 'seat',
        seat: seat('old', { studentId: into, status: 'in', reason: null, joinedAt: time(1) }),
      },
      {
        kind: 'seat',
        seat: seat('new', { studentId: from, status: 'in', reason: null, joinedAt: time(2) }),
      },
      { kind: 'seat', seat: seat('away', { studentId: from, status: 'gone', reason: 'refused' }) },
    ]);
    await store.groups.mergeStudents(from, into);
    const seats = [...(await state()).seats.values()].map(({ id, studentId, status, reason }) => [
      id,
      studentId,
      status,
      reason,
    ]);
    expect(seats.sort()).toEqual([
      ['away', into, 'gone', 'refused'],
      ['new', into, 'in', null],
      ['old', into, 'gone', 'moved'],
    ]);
  });

  test('all of it, or nothing', async () => {
    await store.classes.commit(classId, [given(from, 1), given(into, 2)]);
    const before = await state();
    await expect(store.groups.mergeStudents(from, 'nobody' as StudentId)).rejects.toThrow();
    expect(await state()).toEqual(before);
  });
});
