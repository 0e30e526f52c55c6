import { beforeEach, describe, expect, it } from 'vitest';
import { memoryStore, type KeyStore } from '../../../client/lib/key-store.ts';
import { Outbox, type Send } from '../../../client/connection/outbox.ts';
import type { Answer } from '../../../shared/exercise/answer.ts';
import { errorReply, type ErrorCode } from '../../../shared/protocol/errors.ts';
import type { CommandReply } from '../../../shared/protocol/events.ts';
import type { RoundId, SendId } from '../../../shared/protocol/ids.ts';
import type { OwnAnswerView } from '../../../shared/protocol/views.ts';
import { place } from '../../../shared/theory/fretboard.ts';
import { chord, line } from '../../support/heard.ts';

const round = 'round-1' as RoundId;
const earlier = 'round-0' as RoundId;
const three = [place(3, 9), place(2, 10), place(1, 8)];
const one: Answer = { places: three.slice(0, 1) };
const two: Answer = { places: three.slice(0, 2) };
const answer: Answer = { places: three };

interface Waiting {
  readonly send: Send;
  readonly reply: (reply: CommandReply) => Promise<void>;
}

/** A device: its storage outlives its page, time is turned by hand, the server's replies are given by hand. */
class Device {
  readonly sends: Waiting[] = [];
  now = 0;
  changes = 0;
  #timers: { at: number; task: () => void }[] = [];
  #ids = 0;
  readonly outbox: Outbox;

  constructor(
    readonly storage: KeyStore = memoryStore(),
    name = 'send',
  ) {
    this.outbox = new Outbox({
      storage,
      send: (send) =>
        new Promise((resolve) => {
          this.sends.push({
            send,
            reply: async (reply) => {
              resolve(reply);
              await Promise.resolve();
              await Promise.resolve();
            },
          });
        }),
      newSendId: () => `${name}-${String((this.#ids += 1))}` as SendId,
      after: (milliseconds, task) => {
        const timer = { at: this.now + milliseconds, task };
        this.#timers.push(timer);
        return () => void (this.#timers = this.#timers.filter((other) => other !== timer));
      },
      changed: () => void (this.changes += 1),
    });
  }

  pass(milliseconds: number): void {
    this.now += milliseconds;
    const due = this.#timers.filter(({ at }) => at <= this.now);
    this.#timers = this.#timers.filter(({ at }) => at > this.now);
    for (const { task } of due) task();
  }

  /** The nth thing that was sent. */
  sent(at: number): Waiting {
    const waiting = this.sends[at];
    if (!waiting) throw new Error(`nothing was sent as number ${String(at)}`);
    return waiting;
  }

  /** The tab is closed and opened again: memory gone, storage kept. */
  reload(): Device {
    return new Device(this.storage, 'after-reload');
  }
}

const ok: CommandReply = { ok: true };
const refused = (code: ErrorCode): CommandReply => ({ ok: false, error: errorReply(code) });
const held = (send: Send, late = false): OwnAnswerView => ({ ...send, late });

let device: Device;
beforeEach(() => {
  device = new Device();
});

describe('when what is placed goes out', () => {
  it('waits for a pause in the taps and then sends the newest alone', () => {
    device.outbox.place(round, one, false);
    device.pass(399);
    device.outbox.place(round, two, false);
    device.pass(399);
    expect(device.sends).toHaveLength(0);
    device.pass(1);
    expect(device.sends.map(({ send }) => send)).toEqual([
      { roundId: round, sendId: 'send-2', ...two, done: false },
    ]);
  });

  it('sends at once when the student is done, and not again after the pause', () => {
    device.outbox.place(round, answer, false);
    device.outbox.place(round, answer, true);
    expect(device.sent(0).send.done).toBe(true);
    device.pass(10_000);
    expect(device.sends).toHaveLength(1);
  });

  it('sends at once on demand, as at the hold', () => {
    device.outbox.place(round, answer, false);
    device.outbox.flush();
    expect(device.sends).toHaveLength(1);
  });

  it('does not send again what is on its way', () => {
    device.outbox.place(round, answer, true);
    device.outbox.flush();
    device.outbox.flush();
    expect(device.sends).toHaveLength(1);
  });
});

describe('what becomes of it', () => {
  it('is unsent, then safe, then gone from the storage', async () => {
    device.outbox.place(round, answer, true);
    expect(device.outbox.draftFor(round)?.fate).toBe('unsent');
    await device.sent(0).reply(ok);
    expect(device.outbox.draftFor(round)).toMatchObject({ fate: 'safe', places: three });
    expect(device.storage.keys()).toEqual([]);
  });

  it('is late where the server says so', async () => {
    device.outbox.place(round, answer, true);
    await device.sent(0).reply({ ok: true, late: true });
    expect(device.outbox.draftFor(round)?.fate).toBe('late');
  });

  it('stays unsent while only an older send is acknowledged', async () => {
    device.outbox.place(round, one, true);
    device.outbox.place(round, answer, true);
    await device.sent(0).reply(ok);
    expect(device.outbox.draftFor(round)).toMatchObject({ fate: 'unsent', places: three });
    expect(device.reload().outbox.draftFor(round)?.places).toEqual(three);
    await device.sent(1).reply(ok);
    expect(device.outbox.draftFor(round)?.fate).toBe('safe');
  });

  it.each([
    'store-failed',
    'server-failed',
    'too-many-tries',
    'too-fast',
    'server-busy',
    'server-stopping',
    'not-admitted',
    'page-too-old',
  ] as const)('is kept and sent again under the same id after "%s"', async (code) => {
    device.outbox.place(round, answer, true);
    await device.sent(0).reply(refused(code));
    expect(device.outbox.draftFor(round)?.fate).toBe('unsent');
    device.pass(2000);
    expect(device.sent(1).send).toEqual(device.sent(0).send);
  });

  it.each(['round-voided', 'round-unknown', 'class-closed', 'seat-unknown', 'off-the-neck'] as const)(
    'is let go after "%s"',
    async (code) => {
      device.outbox.place(round, answer, true);
      await device.sent(0).reply(refused(code));
      expect(device.outbox.draftFor(round)).toBeNull();
      device.pass(60_000);
      device.outbox.flush();
      expect(device.sends).toHaveLength(1);
    },
  );
});

describe('what survives', () => {
  it('an unsent answer survives a reload and goes out on the next connect, under its first id', () => {
    device.outbox.place(round, answer, true);
    const after = device.reload();
    expect(after.outbox.draftFor(round)).toMatchObject({ places: three, done: true, fate: 'unsent' });
    after.outbox.flush();
    expect(after.sent(0).send).toEqual(device.sent(0).send);
  });

  it('an unsent answer of an earlier round goes out as well', () => {
    device.outbox.place(earlier, answer, false);
    device.outbox.place(round, answer, false);
    const after = device.reload();
    after.outbox.flush();
    expect(after.sends.map(({ send }) => send.roundId).sort()).toEqual([earlier, round]);
  });

  it('text in the storage that is not an answer is passed over', () => {
    device.storage.set('rootcall.unsent.round-1', '{"places":');
    device.storage.set('rootcall.unsent.round-2', '{"roundId":"round-2","sendId":"x"}');
    device.outbox.flush();
    expect(device.sends).toEqual([]);
    expect(device.outbox.draftFor(round)).toBeNull();
  });

  const rich: Answer = { places: three, root: place(2, 10), finger: 3 };
  const named: Answer = { places: [], named: { kind: 'note', note: { letter: 'E', alteration: -1 } } };
  const degree: Answer = { places: [], named: { kind: 'degree', degree: 'b3' } };

  it.each([
    ['a root mark and its finger', rich],
    ['a note named', named],
    ['a degree named', degree],
    ['the second level', { ...rich, level: 2 as const }],
  ])('%s goes out, survives a reload and goes out again the same', async (_, given) => {
    device.outbox.place(round, given, true);
    const { send } = device.sent(0);
    expect(send).toEqual({ roundId: round, sendId: 'send-1', ...given, done: true });
    const after = device.reload();
    expect(after.outbox.draftFor(round)).toEqual({ ...send, fate: 'unsent' });
    after.outbox.flush();
    expect(after.sent(0).send).toEqual(send);
    await after.sent(0).reply(ok);
    expect(after.outbox.draftFor(round)).toBeNull();
  });

  it('a send that an older page stored, with places alone, still counts', () => {
    const stored = { roundId: round, sendId: 'send-0', places: three, done: true };
    device.storage.set(`rootcall.unsent.${round}`, JSON.stringify(stored));
    device.outbox.flush();
    expect(device.sent(0).send).toEqual(stored);
  });

  it('a send that was played counts with all that was heard', () => {
    const played = { heard: { ...chord(4, 7, 11), lowest: 4 }, way: 'play' };
    for (const field of [played, { heard: line(60, 62), way: 'midi' }]) {
      device = new Device();
      const stored = { roundId: round, sendId: 'send-0', places: three.slice(0, 1), done: true, ...field };
      device.storage.set(`rootcall.unsent.${round}`, JSON.stringify(stored));
      device.outbox.flush();
      expect(device.sent(0).send).toEqual(stored);
    }
  });

  it.each([
    ['no places', { places: undefined }],
    ['a place without a fret', { places: [{ string: 2 }] }],
    ['a fret that is no whole number', { places: [{ string: 2, fret: 1.5 }] }],
    ['a string in words', { places: [{ string: '2', fret: 5 }] }],
    ['a name of no kind', { named: { kind: 'chord', note: { letter: 'E', alteration: 0 } } }],
    ['a note of no letter', { named: { kind: 'note', note: { letter: 'H', alteration: 0 } } }],
    ['a triple accidental', { named: { kind: 'note', note: { letter: 'E', alteration: -3 } } }],
    ['a degree that no key has', { named: { kind: 'degree', degree: 'b9' } }],
    ['a root in words', { root: 'string 2' }],
    ['a fifth finger', { finger: 5 }],
    ['a fourth level', { level: 4 }],
    ['something heard of no kind', { heard: { kind: 'noise', pitches: [] } }],
    ['a line of nothing', { heard: { kind: 'line', pitches: [] } }],
    ['a pitch beyond MIDI', { heard: line(128) }],
    ['a pitch between two', { heard: line(60.5) }],
    ['a tone of no name', { heard: chord(12) }],
    ['a lowest tone in words', { heard: { ...chord(4, 7, 11), lowest: 'E' } }],
    ['a certainty beyond all', { heard: { kind: 'chord', tones: [{ pitchClass: 4, confidence: 2 }] } }],
    ['a way of no kind', { way: 'sing' }],
  ])('a stored send with %s counts as nothing', (_, field) => {
    const stored = { roundId: round, sendId: 'send-0', places: three, done: true, ...field };
    device.storage.set(`rootcall.unsent.${round}`, JSON.stringify(stored));
    expect(device.outbox.draftFor(round)).toBeNull();
    device.outbox.flush();
    expect(device.sends).toEqual([]);
  });

  it("nothing survives when the device becomes another student's", () => {
    device.outbox.place(earlier, answer, false);
    device.outbox.place(round, answer, false);
    device.outbox.clear();
    device.pass(10_000);
    device.reload().outbox.flush();
    expect(device.sends).toEqual([]);
    expect(device.storage.keys()).toEqual([]);
  });
});

describe("the server's own view", () => {
  it('takes over once it holds what was sent, even if the acknowledgement was lost', () => {
    device.outbox.place(round, answer, true);
    device.outbox.settle(held(device.sent(0).send));
    expect(device.outbox.draftFor(round)).toBeNull();
    expect(device.storage.keys()).toEqual([]);
  });

  it('does not take over while it still holds an older answer', () => {
    device.outbox.place(round, one, true);
    device.outbox.place(round, answer, true);
    device.outbox.settle(held(device.sent(0).send));
    expect(device.outbox.draftFor(round)).toMatchObject({ fate: 'unsent', places: three });
  });

  it('takes over from a safe draft, so that a later answer from elsewhere shows', async () => {
    device.outbox.place(round, answer, true);
    await device.sent(0).reply(ok);
    device.outbox.settle({ roundId: round, sendId: 'other' as SendId, places: [], done: false, late: false });
    expect(device.outbox.draftFor(round)).toBeNull();
  });
});

describe('two tabs of one student', () => {
  const key = `rootcall.unsent.${round}`;

  it('show the same, and the second delivers if the first does not live to', () => {
    const second = new Device(device.storage, 'second');
    device.outbox.place(round, answer, false);
    second.outbox.storageChanged(key, device.storage.get(key));
    expect(second.outbox.draftFor(round)).toMatchObject({ places: three, fate: 'unsent' });
    second.pass(400);
    expect(second.sent(0).send.sendId).toBe('send-1');
  });

  it('learn from the storage that the other has delivered', async () => {
    const second = new Device(device.storage, 'second');
    device.outbox.place(round, answer, true);
    second.outbox.storageChanged(key, device.storage.get(key));
    await device.sent(0).reply(ok);
    second.outbox.storageChanged(key, device.storage.get(key));
    expect(second.outbox.draftFor(round)?.fate).toBe('safe');
    second.pass(400);
    expect(second.sends).toEqual([]);
  });
});
