import type { Database as Connection } from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { migrations } from '../../../server/store/migrations/list.ts';
import { connect } from '../../../server/store/sqlite/connect.ts';
import { migrate } from '../../../server/store/sqlite/migrate.ts';
import { known } from '../../../shared/lib/assert.ts';
import type { PlanId, StudentId } from '../../../shared/protocol/ids.ts';
import { place } from '../../../shared/theory/fretboard.ts';
import { pitchClass } from '../../../shared/theory/pitch.ts';
import { answer, classId, fillStore, find, groupId, head, student } from './samples.ts';
import { tempPlace, type TempPlace } from './temp-place.ts';

describe('a store made by an earlier version', () => {
  let where: TempPlace;

  beforeEach(() => {
    where = tempPlace();
  });
  afterEach(async () => {
    await where.remove();
  });

  /** Makes a store at a schema, with what `fill` writes in it as that schema has it. */
  function makeAt(schema: number, fill: (connection: Connection) => void): void {
    const connection = connect(where.path);
    migrate(connection, where.path, migrations.slice(0, schema));
    fill(connection);
    connection.close();
  }

  it.each(migrations.map(({ number }) => number - 1))('is brought up from schema %i', async (schema) => {
    makeAt(schema, (connection) => {
      if (schema === 0) return;
      fillAsEver(connection, { a: { kind: 'right' } });
      showChart(connection, schema);
      planIn(connection, schema);
    });
    const store = await where.open();
    expect(store.describe().schema).toBe(migrations.length);
    if (schema === 0) await fillStore(store);
    if (schema === 0) await store.groups.saveStudent(groupId, student('a'));
    const state = known(await store.classes.load(classId), 'class');
    expect([...state.students.keys()]).toContain('a');
    expect(state.turn).toBeNull();
    if (schema > 0) {
      expect(state.show).toEqual({ kind: 'charts', charts: [find()], at: 0 });
      expect(state.rounds[0]?.harder).toEqual([]);
      const exercises = [
        { id: 'e0', part: 'new', exercise: find(), harder: [], seconds: 30 },
        { id: 'e1', part: 'new', exercise: find(3), harder: [], seconds: null },
      ];
      expect(state.plan).toEqual({ id: 'plan', title: 'Roots', exercises });
      const kept = known(await store.plans.byId('plan' as PlanId), 'plan');
      expect(kept).toMatchObject({ title: 'Roots', aim: '', points: [], revision: 1, exercises });
    }
    await store.close();
  });

  it('from schema 1 reads right: causes by their new names, all else as it was', async () => {
    const marks = [{ place: place(2, 10), right: false }];
    const corrections = [{ from: place(2, 10), to: place(2, 3) }];
    const slip = (cause: string) => ({ kind: 'slip', cause, marks, corrections, missing: [place(2, 3)] });
    const unclear = (...causes: readonly string[]) => ({ kind: 'unclear', causes, marks, missing: [] });
    makeAt(1, (connection) =>
      fillAsEver(connection, {
        a: slip('string-6-map'),
        b: slip('string-3-to-2-step'),
        c: unclear('string-6-map', 'string-3-to-2-step'),
        d: unclear('wrong-octave', 'string-6-map'),
        e: slip('other-place'),
        f: { kind: 'right' },
      }),
    );
    const store = await where.open();
    const state = known(await store.classes.load(classId), 'class');
    const answers = known(state.rounds[0], 'round').answers;
    expect([...answers.values()].map(({ verdict }) => verdict)).toEqual([
      slip('low-string-map'),
      slip('short-step'),
      unclear('low-string-map', 'short-step'),
      unclear('wrong-octave', 'low-string-map'),
      slip('other-place'),
      { kind: 'right' },
    ]);
    // A name is a name.
    expect(state.students.get('a' as StudentId)?.name).toBe('string-6-map');
    const before = known(answers.get('f' as StudentId), 'answer');
    expect(before).toStrictEqual({
      sendId: 'send f',
      seen: ['send f'],
      places: [place(2, 10)],
      done: true,
      at: 2500,
      by: 'student',
      verdict: { kind: 'right' },
      accepted: false,
      counted: true,
    });
    await store.classes.commit(classId, [answer('r1', 'f', { root: place(2, 10), finger: 1 })]);
    const after = known(await store.classes.load(classId), 'class').rounds[0]?.answers.get('f' as StudentId);
    expect(after).toMatchObject({ root: place(2, 10), finger: 1 });
    await store.close();
  });

  it('from schema 5 counts as before, and what was heard without a place too', async () => {
    makeAt(5, (connection) => {
      fillAsEver(connection, { a: { kind: 'right' }, b: { kind: 'slip' }, c: { kind: 'right' } });
      planIn(connection, 5);
      connection.exec(`update answers set places = '[]' where student_id = 'c'`);
    });
    const store = await where.open();
    const share = async () => (await store.classes.ofGroup(groupId))[0]?.share;
    expect(await share()).toEqual({ right: 1, of: 2 });
    const heard = { kind: 'chord', tones: [{ pitchClass: pitchClass(2), confidence: 0.9 }] } as const;
    await store.classes.commit(classId, [
      answer('r1', 'c', { places: [], heard, way: 'play', verdict: { kind: 'right' } }),
    ]);
    expect(await share()).toEqual({ right: 2, of: 3 });
    await store.classes.commit(classId, [{ kind: 'class', head: head({ turn: 'c' as StudentId }) }]);
    expect((await store.classes.load(classId))?.turn).toBe('c');
    await store.close();
  });
});

/** Until schema 2 one chart could be shown, kept as its exercise. */
function showChart(connection: Connection, schema: number): void {
  const show = schema < 3 ? { kind: 'chart', exercise: find() } : { kind: 'charts', charts: [find()], at: 0 };
  connection.prepare('update classes set show = ?').run(JSON.stringify(show));
}

/** Until schema 3 a plan was a title and exercises with their time; the class has a copy. */
function planIn(connection: Connection, schema: number): void {
  const exercises = [
    { exercise: find(), seconds: 30 },
    { exercise: find(3), seconds: null },
  ];
  connection.exec(
    `insert into plans (id, group_id, title, updated_at) values ('plan', '${groupId}', 'Roots', 1)`,
  );
  const save = connection.prepare(
    `insert into exercises (plan_id, position, exercise, seconds) values ('plan', ?, ?, ?)`,
  );
  for (const [position, { exercise, seconds }] of exercises.entries())
    save.run(position, JSON.stringify(exercise), seconds);
  // Since then an exercise of a plan has a name, a part and levels.
  if (schema >= 4) connection.exec(`update exercises set id = 'e' || position`);
  const copied = exercises.map((one, index) =>
    schema >= 4 ? { id: `e${String(index)}`, part: 'new', ...one, harder: [] } : one,
  );
  connection
    .prepare('update classes set plan = ?')
    .run(JSON.stringify({ id: 'plan', title: 'Roots', exercises: copied }));
}

/** A class with one revealed round, in SQL: today's store no longer writes the earlier schemas. */
function fillAsEver(connection: Connection, verdicts: Readonly<Record<string, object>>): void {
  connection.exec(`
    insert into teachers values ('teacher-1', 'Edda Lindqvist', 'edda lindqvist', 'hash', 1);
    insert into groups values ('${groupId}', 'teacher-1', 'Thursday Strings', '', 'guitar', 'english', 'en', null, 1);
    insert into classes (id, group_id, code, opened_at, settings)
      values ('${classId}', '${groupId}', 'BCDFHJ', 1, '{"autoAdmit":false,"score":"class","ranking":false}');`);
  connection
    .prepare(
      `insert into rounds (id, class_id, number, exercise, phase, voided, opened_at)
       values ('r1', ?, 1, ?, 'revealed', 0, 2000)`,
    )
    .run(classId, JSON.stringify(find()));
  const saveStudent = connection.prepare(
    `insert into students (id, group_id, name, more_time) values (?, ?, 'string-6-map', 1)`,
  );
  const saveAnswer = connection.prepare(
    `insert into answers (round_id, student_id, late, send_id, seen, places, done, at, given_by, verdict, accepted, counted)
       values ('r1', ?, 0, ?, ?, '[{"string":2,"fret":10}]', 1, 2500, 'student', ?, 0, 1)`,
  );
  for (const [id, verdict] of Object.entries(verdicts)) {
    saveStudent.run(id, groupId);
    saveAnswer.run(id, `send ${id}`, JSON.stringify([`send ${id}`]), JSON.stringify(verdict));
  }
}
