import { afterEach, describe, expect, test } from 'vitest';
import type { Group } from '../../server/store/store.ts';
import { place } from '../../shared/theory/fretboard.ts';
import { build, find, places } from '../support/exercises.ts';
import { LiveClass } from '../support/live-class.ts';

let live: LiveClass;

afterEach(async () => {
  await live.stop();
});

interface Refusal {
  readonly error: { readonly code: string; readonly message: string };
}

const sentence: unknown = expect.stringMatching(/^\S.+\.$/);

describe('a group’s instrument', () => {
  test('EDGE-1: one that is not known is refused with a sentence, new or changed', async () => {
    live = await LiveClass.start();
    const group = { name: 'Friday Strings', school: '', naming: 'english', language: 'en', purgeAt: null };
    for (const instrument of ['', 'lute', 'guitar+capo=30', 'custom:E4', 'custom:X4-B3-G3']) {
      const made = await live.teacher.call<Refusal>('POST', 'groups', { ...group, instrument });
      expect(made).toEqual({
        status: 400,
        body: { error: { code: 'instrument-refused', message: sentence } },
      });
      const changed = await live.teacher.call('PATCH', `groups/${live.groupId}`, { instrument });
      expect(changed).toEqual(made);
    }
    const long = await live.teacher.call<Refusal>('POST', 'groups', {
      ...group,
      instrument: 'x'.repeat(200),
    });
    expect(long.body.error.code).toBe('too-long');
    const kept = await live.teacher.call<{ group: Group }>('GET', `groups/${live.groupId}`);
    expect(kept.body.group.instrument).toBe('guitar');
  });

  test('EDGE-1: an exercise on one that is not known can’t be planned, asked or shown', async () => {
    live = await LiveClass.start();
    const exercise = find('D', { instrument: 'lute' });
    const plan = { title: 'Lute', exercises: [{ exercise, seconds: null }] };
    const planned = await live.teacher.call<Refusal>('POST', `groups/${live.groupId}/plans`, plan);
    expect(planned.body.error).toEqual({
      code: 'exercise-refused',
      message: expect.stringMatching(/^Exercise 1: .+\.$/),
    });
    for (const command of [
      { kind: 'ask', exercise, seconds: null },
      { kind: 'show-charts', charts: [exercise] },
    ])
      expect(await live.desk.ask(command)).toMatchObject({ error: { code: 'exercise-refused' } });
  });

  test('the group’s is everywhere, a task or chart on another carries its own', async () => {
    live = await LiveClass.start('ukulele');
    const kaya = await live.seat('Kaya');
    expect([kaya.shared?.instrument, live.board.board?.instrument, live.desk.desk?.instrument]).toEqual(
      Array.from({ length: 3 }, () => 'ukulele'),
    );
    await live.ask(find('D', { instrument: 'ukulele', rootString: place(1, 0).string }));
    expect(kaya.shared?.stage).toMatchObject({ task: { instrument: 'ukulele' } });
    // String 1 of a ukulele is A4 (common practice): D is fret 5. It has four strings.
    expect(await live.give(kaya, { places: places([6, 3]) })).toMatchObject({
      error: { code: 'off-the-neck' },
    });
    await live.give(kaya, { places: places([1, 5]) });
    await live.hold();
    await live.reveal();
    await kaya.until(({ own }) => own?.verdict?.kind === 'right');

    await live.desk.ask({ kind: 'show-charts', charts: [build('E', 'minor')] });
    await kaya.until(({ shared }) => shared?.stage.kind === 'show');
    expect(kaya.shared).toMatchObject({
      instrument: 'ukulele',
      stage: { show: { kind: 'chart', instrument: 'guitar' } },
    });
  });

  test('the teacher’s taps lie on its neck, also after it was changed', async () => {
    live = await LiveClass.start();
    const kaya = await live.seat('Kaya');
    const refused = await live.desk.ask({ kind: 'show-taps', places: places([2, 5], [7, 1]) });
    expect(refused).toMatchObject({ error: { code: 'off-the-neck' } });
    expect(await live.desk.ask({ kind: 'show-taps', places: places([2, 5], [6, 3]) })).toEqual({ ok: true });
    await kaya.until(({ shared }) => shared?.stage.kind === 'show');
    await live.teacher.call('PATCH', `groups/${live.groupId}`, { instrument: 'ukulele' });
    await kaya.until(({ shared }) => shared?.instrument === 'ukulele');
    expect(kaya.shared?.stage).toMatchObject({ show: { places: places([2, 5]) } });
  });
});
