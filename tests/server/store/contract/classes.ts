import { beforeEach, describe, expect, it } from 'vitest';
import { reduce } from '../../../../server/classroom/reduce.ts';
import type { Change } from '../../../../server/classroom/state.ts';
import type { Answer } from '../../../../shared/exercise/answer.ts';
import { known } from '../../../../shared/lib/assert.ts';
import type { ClassCode, ClassId, GroupId, SendId, StudentId } from '../../../../shared/protocol/ids.ts';
import { place } from '../../../../shared/theory/fretboard.ts';
import { pitchClass, type MidiNote } from '../../../../shared/theory/pitch.ts';
import type { StoreAt } from '../../../support/store-contract.ts';
import {
  answer,
  classId,
  fillStore,
  find,
  groupId,
  head,
  newClass,
  placed,
  plan,
  right,
  round,
  seat,
  student,
  teacherId,
  time,
} from '../samples.ts';

const midi = (note: number) => note as MidiNote;
const tone = (semitones: number) => ({ pitchClass: pitchClass(semitones), confidence: 0.9 });

/** Classes as they are made, changed, loaded and summed up. */
export function describeClasses(at: StoreAt): void {
  describe('classes', () => {
    beforeEach(async () => {
      await fillStore(at.store);
    });

    it('starts a class at rest', async () => {
      await at.store.groups.saveStudent(groupId, student('a'));
      expect(await at.load()).toEqual({
        id: classId,
        groupId,
        teacherId,
        code: 'BCDFHJ',
        group: 'Thursday Strings',
        school: 'Alderwick Community Music School',
        instrument: 'guitar',
        naming: 'english',
        openedAt: time(1000),
        ...head(),
        students: new Map([['a', student('a')]]),
        seats: new Map(),
        rounds: [],
        lastTime: new Map(),
      });
      expect(await at.store.classes.load('none' as ClassId)).toBeUndefined();
    });

    it('tells what was asked, and of nobody', async () => {
      await at.store.groups.saveStudent(groupId, student('a'));
      const asked = [round('r1'), round('r2', { number: 2, phase: 'open', harder: [find(3)] })];
      await at.store.classes.commit(classId, [
        ...asked.map((one): Change => ({ kind: 'round', round: one })),
        { kind: 'class', head: head({ plan, stage: 'round' }) },
        answer('r1', 'a'),
      ]);
      expect(await at.store.classes.asked(classId)).toEqual({
        plan,
        openedAt: time(1000),
        instrument: 'guitar',
        naming: 'english',
        stage: 'round',
        rounds: asked,
      });
      expect(await at.store.classes.asked('none' as ClassId)).toBeUndefined();
    });

    it('makes a class that is over already, whoever has its code', async () => {
      const over = newClass({ id: 'class-2' as ClassId, openedAt: time(500), closedAt: time(500) });
      expect(await at.store.classes.create(over)).toBe('created');
      expect((await at.store.classes.load(over.id))?.closedAt).toBe(over.closedAt);
      expect(await at.store.classes.open()).toEqual([classId]);
      expect(await at.store.classes.byCode(over.code)).toBe(classId);
    });

    it('gives a code to one open class at a time', async () => {
      const second = newClass({ id: 'class-2' as ClassId, openedAt: time(5000) });
      expect(await at.store.classes.create(second)).toBe('code-taken');
      expect(await at.store.classes.load(second.id)).toBeUndefined();
      await at.store.classes.commit(classId, [{ kind: 'class', head: head({ closedAt: time(4000) }) }]);
      // Over, but still known by its code, so that who comes late hears that it is over.
      expect(await at.store.classes.byCode(second.code)).toBe(classId);
      expect(await at.store.classes.create(second)).toBe('created');
      expect(await at.store.classes.byCode(second.code)).toBe(second.id);
      expect(await at.store.classes.byCode('ZZZZZZ' as ClassCode)).toBeUndefined();
      expect(await at.store.classes.open()).toEqual([second.id]);
    });

    it('loads after a restart exactly what was committed', async () => {
      const before = await at.load();
      const steps: readonly (readonly Change[])[] = [
        [{ kind: 'seat', seat: seat('s1', { name: 'Óscar' }) }],
        [
          { kind: 'student', student: student('a', { name: 'Óscar' }) },
          {
            kind: 'seat',
            seat: seat('s1', { name: 'Óscar', studentId: 'a' as StudentId, status: 'in', reason: null }),
          },
        ],
        [{ kind: 'student', student: student('b', { seatNumber: 4, team: 'Reeds', moreTime: 1.5 }) }],
        [
          { kind: 'class', head: head({ plan, stage: 'round' }) },
          {
            kind: 'round',
            round: round('r1', {
              planIndex: 0,
              seconds: 30,
              phase: 'open',
              heldAt: null,
              revealedAt: null,
            }),
          },
        ],
        [answer('r1', 'a')],
        [
          answer('r1', 'a', {
            sendId: 's2' as SendId,
            seen: ['send-1', 's2'] as SendId[],
            places: [],
            done: true,
          }),
        ],
        [
          {
            kind: 'round',
            round: round('r1', { planIndex: 0, seconds: 30, phase: 'held', revealedAt: null }),
          },
        ],
        [
          answer('r1', 'a', { places: [place(2, 3), place(1, 0)], verdict: right }, true),
          answer('r1', 'b', {}, true),
        ],
        [answer('r1', 'a', { accepted: true, by: 'teacher' })],
        [
          { kind: 'round', round: round('r2', { number: 2, voided: true, exercise: find(3) }) },
          answer('r2', 'b', {
            verdict: {
              kind: 'unclear',
              causes: ['wrong-octave', 'outside-range'],
              marks: [],
              missing: [place(2, 3)],
            },
          }),
        ],
        [
          {
            kind: 'class',
            head: head({
              settings: { autoAdmit: true, score: 'teams', ranking: true },
              plan,
              cursor: 2,
              show: { kind: 'taps', places: [place(2, 0)] },
              closedAt: time(9000),
            }),
          },
        ],
      ];
      for (const changes of steps) await at.store.classes.commit(classId, changes);
      const expected = reduce(before, steps.flat());
      expect(await at.load()).toEqual(expected);
      await at.reopen();
      expect(await at.load()).toEqual(expected);
      // Every change says how something is: taking all of them in once more changes nothing.
      for (const changes of steps) await at.store.classes.commit(classId, changes);
      expect(await at.load()).toEqual(expected);
    });

    it('keeps all that an answer carries, and nothing of the one before it', async () => {
      const note = { kind: 'note', note: { letter: 'E', alteration: -1 } } as const;
      const carried: readonly Answer[] = [
        { places: [], named: note },
        { places: [], named: { kind: 'degree', degree: 'b3' } },
        { places: [place(2, 5), place(1, 3)], root: place(2, 5) },
        { places: [place(2, 5)], finger: 2 },
        {
          places: [],
          heard: { kind: 'line', pitches: [{ pitch: midi(62), at: 0, confidence: 0.98 }] },
          way: 'play',
        },
        {
          places: [place(2, 5)],
          heard: { kind: 'chord', tones: [tone(4), tone(7)], lowest: pitchClass(4) },
          way: 'midi',
        },
        { places: [place(2, 5)], way: 'midi' },
        { places: [place(2, 5), place(2, 5)], root: place(2, 5), finger: 4 },
        { places: [] },
      ];
      await at.store.classes.commit(classId, [
        { kind: 'student', student: student('a') },
        { kind: 'round', round: round('r1') },
      ]);
      for (const one of carried) {
        await at.store.classes.commit(classId, [answer('r1', 'a', one)]);
        await at.reopen();
        const kept = known((await at.load()).rounds[0]?.answers.get('a' as StudentId), 'answer');
        // Strict: what is absent stays absent.
        expect(kept).toStrictEqual(placed(one));
      }
    });

    it('TURN-2: keeps whose turn it is, until that student is gone; of two made one it stays', async () => {
      const turn = (id: string): Change => ({ kind: 'class', head: head({ turn: id as StudentId }) });
      await at.store.classes.commit(classId, [
        ...['a', 'b', 'c'].map((id) => ({ kind: 'student' as const, student: student(id) })),
        turn('a'),
      ]);
      await at.reopen();
      expect((await at.load()).turn).toBe('a');
      await at.store.groups.removeStudent('c' as StudentId);
      expect((await at.load()).turn).toBe('a');
      await at.store.groups.mergeStudents('a' as StudentId, 'b' as StudentId);
      expect((await at.load()).turn).toBe('b');
      await expect(at.store.classes.commit(classId, [turn('a')])).rejects.toThrow();
      await at.store.groups.removeStudent('b' as StudentId);
      await at.reopen();
      expect((await at.load()).turn).toBeNull();
    });

    it('loads students, seats and rounds in a steady order', async () => {
      const changes: readonly Change[] = [
        { kind: 'student', student: student('z', { name: 'Abel' }) },
        { kind: 'student', student: student('y', { seatNumber: 2 }) },
        { kind: 'seat', seat: seat('s2', { joinedAt: time(1300) }) },
        { kind: 'seat', seat: seat('s9', { joinedAt: time(1200) }) },
        { kind: 'round', round: round('r2', { number: 2 }) },
        { kind: 'round', round: round('r1', { number: 1 }) },
      ];
      await at.store.classes.commit(classId, changes);
      const state = await at.load();
      expect([...state.students.keys()]).toEqual(['y', 'z']);
      expect([...state.seats.keys()]).toEqual(['s9', 's2']);
      expect(state.rounds.map(({ id }) => id)).toEqual(['r1', 'r2']);
    });

    it('finds the class of a seat by its token', async () => {
      await at.store.classes.commit(classId, [{ kind: 'seat', seat: seat('s1') }]);
      expect(await at.store.classes.bySeatToken('token of s1')).toBe(classId);
      expect(await at.store.classes.bySeatToken('s1')).toBeUndefined();
    });

    it('removes a student with seats and answers, from every class', async () => {
      await at.store.classes.commit(classId, [
        { kind: 'student', student: student('a') },
        { kind: 'student', student: student('b') },
        { kind: 'seat', seat: seat('s1', { studentId: 'a' as StudentId }) },
        { kind: 'seat', seat: seat('s2', { studentId: 'b' as StudentId }) },
        { kind: 'round', round: round('r1') },
        answer('r1', 'a'),
        answer('r1', 'a', {}, true),
        answer('r1', 'b'),
      ]);
      await at.store.groups.removeStudent('a' as StudentId);
      await at.reopen();
      const state = await at.load();
      expect([...state.students.keys()]).toEqual(['b']);
      expect([...state.seats.keys()]).toEqual(['s2']);
      expect([...known(state.rounds[0], 'round').answers.keys()]).toEqual(['b']);
      expect(state.rounds[0]?.late.size).toBe(0);
      expect(await at.store.classes.bySeatToken('token of s1')).toBeUndefined();
    });

    it('removes with a student the seats at which the same name asked in vain', async () => {
      await at.store.classes.commit(classId, [
        { kind: 'student', student: student('a', { name: 'Óscar' }) },
        { kind: 'seat', seat: seat('s1', { name: ' OSCAR', status: 'gone', reason: 'refused' }) },
        { kind: 'seat', seat: seat('s2', { name: 'Oscara' }) },
      ]);
      await at.store.groups.removeStudent('a' as StudentId);
      expect([...(await at.load()).seats.keys()]).toEqual(['s2']);
    });

    it('gives answers and seats of a student to another; the answer that counts later stays', async () => {
      const [a, b] = ['a', 'b'] as StudentId[];
      const rounds = ['r1', 'r2', 'r3', 'r4', 'r5', 'r6'];
      await at.store.classes.commit(classId, [
        ...['a', 'b', 'c'].map((id) => ({ kind: 'student' as const, student: student(id) })),
        ...rounds.map((id, n) => ({ kind: 'round' as const, round: round(id, { number: n + 1 }) })),
        { kind: 'seat', seat: seat('s1', { studentId: known(a, 'a'), status: 'in', joinedAt: time(2) }) },
        { kind: 'seat', seat: seat('s2', { studentId: known(b, 'b'), status: 'in', joinedAt: time(1) }) },
        { kind: 'seat', seat: seat('s3', { studentId: 'c' as StudentId, status: 'in', joinedAt: time(0) }) },
        // Only the one, both, the other later, later but not counted, later but taken back.
        answer('r1', 'a', { at: time(10) }),
        answer('r2', 'a', { at: time(11) }),
        answer('r2', 'b', { at: time(10), verdict: right }),
        answer('r3', 'a', { at: time(10) }),
        answer('r3', 'b', { at: time(11), verdict: right }),
        answer('r4', 'a', { at: time(11) }, true),
        answer('r4', 'b', { at: time(10), verdict: right }),
        answer('r5', 'a', { at: time(11), places: [] }),
        answer('r5', 'b', { at: time(10), verdict: right }),
        answer('r5', 'c', { at: time(12) }),
        // Later, heard, without a place.
        answer('r6', 'a', { at: time(11), places: [], heard: { kind: 'chord', tones: [tone(4)] } }),
        answer('r6', 'b', { at: time(10), verdict: right }),
      ]);
      await at.store.groups.mergeStudents('a' as StudentId, 'b' as StudentId);
      await at.reopen();
      const state = await at.load();
      expect([...state.students.keys()]).toEqual(['b', 'c']);
      const kept = (index: number) => state.rounds[index]?.answers.get('b' as StudentId);
      expect([0, 1, 2, 3, 4, 5].map((index) => kept(index)?.verdict.kind)).toEqual([
        'slip',
        'slip',
        'right',
        'right',
        'right',
        'slip',
      ]);
      expect(state.rounds.map(({ answers, late }) => [answers.size, late.size])).toEqual([
        [1, 0],
        [1, 0],
        [1, 0],
        [1, 0],
        [2, 0],
        [1, 0],
      ]);
      expect([...state.seats.values()].map(({ id, studentId, status }) => [id, studentId, status])).toEqual([
        ['s3', 'c', 'in'],
        ['s2', 'b', 'gone'],
        ['s1', 'b', 'in'],
      ]);
      await expect(at.store.groups.mergeStudents('b' as StudentId, 'none' as StudentId)).rejects.toThrow();
      expect(await at.load()).toEqual(state);
    });

    it('sums up the classes of a group, the latest first', async () => {
      await at.store.classes.create(
        newClass({ id: 'class-2' as ClassId, code: 'KLMPRS' as ClassCode, openedAt: time(9000) }),
      );
      await at.store.classes.commit(classId, [
        { kind: 'class', head: head({ closedAt: time(8000) }) },
        { kind: 'student', student: student('a') },
        { kind: 'student', student: student('b') },
        ...['c', 'd', 'e'].map((id) => ({ kind: 'student' as const, student: student(id) })),
        { kind: 'round', round: round('r1') },
        answer('r1', 'a', { verdict: right }),
        answer('r1', 'b', { accepted: true }),
        answer('r1', 'c'),
        // Heard without a place: an answer. Everything taken back: none.
        answer('r1', 'd', {
          places: [],
          heard: { kind: 'chord', tones: [tone(4)] },
          way: 'play',
          verdict: right,
        }),
        answer('r1', 'e', { places: [] }),
        { kind: 'round', round: round('r2', { number: 2, voided: true }) },
        answer('r2', 'a', { verdict: right }),
        { kind: 'round', round: round('r3', { number: 3, phase: 'held', revealedAt: null }) },
        answer('r3', 'a', { verdict: right }),
      ]);
      expect(await at.store.classes.ofGroup(groupId)).toEqual([
        {
          id: 'class-2',
          code: 'KLMPRS',
          openedAt: time(9000),
          closedAt: null,
          rounds: 0,
          share: { right: 0, of: 0 },
        },
        {
          id: classId,
          code: 'BCDFHJ',
          openedAt: time(1000),
          closedAt: time(8000),
          rounds: 2,
          share: { right: 3, of: 4 },
        },
      ]);
      expect(await at.store.classes.ofGroup('none' as GroupId)).toEqual([]);
    });
  });
}
