import { RunningClass } from '../../server/live/running-class.ts';
import type { ClassState } from '../../server/classroom/state.ts';
import { openStore } from '../../server/store/sqlite/open-store.ts';
import { atLevel, levelOf, type Level } from '../../shared/exercise/levels.ts';
import { known } from '../../shared/lib/assert.ts';
import type { RoundId, SeatId, SendId, Time } from '../../shared/protocol/ids.ts';
import { place } from '../../shared/theory/fretboard.ts';
import { classId, fillStore, find, seat, student, time } from '../server/store/samples.ts';
import { Random } from './random.ts';

/** What a student does in a round, in this order; `again` sends the same thing once more, as a lost reply makes it. */
interface Deed {
  readonly send: number;
  readonly fret: number;
  readonly level: Level;
  readonly again: boolean;
}

/** What the teacher does after the students had their turn. */
type Teaching = 'hold' | 'void' | 'reveal' | 'undo' | 'next' | 'wait';

interface Phase {
  /** Of each student, what happens in any order beside the others'. */
  readonly deeds: readonly (readonly Deed[])[];
  readonly then: Teaching;
}

/** A class as it might go: rounds, each of them a row of phases. */
export type Script = readonly (readonly Phase[])[];

/** What remains of it: of each round, what each student has, in time and late. */
export type Outcome = readonly {
  readonly voided: boolean;
  readonly revealed: boolean;
  readonly students: readonly (readonly [string | null, string | null])[];
}[];

const shapes: readonly (readonly Teaching[])[] = [
  ['hold', 'reveal', 'next'],
  ['hold', 'wait', 'reveal', 'next'],
  ['void', 'undo', 'hold', 'wait', 'reveal', 'next'],
  ['void'],
  ['hold', 'wait', 'void'],
  ['hold', 'wait', 'void', 'undo', 'undo', 'hold', 'reveal', 'next'],
];

const levels = [1, 2, 3] as const;

/** One answer in short. */
function textOf(send: string, fret: number | undefined, level: Level): string {
  return `${send}@${String(fret)} of level ${String(level)}`;
}

export function writeScript(seed: number): Script {
  const random = new Random(seed);
  const students = 1 + random.below(8);
  let sends = 0;
  return Array.from({ length: 1 + random.below(5) }, () => {
    const before: Deed[][] = Array.from({ length: students }, () => []);
    return random.pick(shapes).map((then) => ({
      then,
      deeds: before.map((earlier) => {
        const deeds = Array.from({ length: random.below(4) }, (): Deed => {
          const old = earlier.length > 0 && random.chance(0.3) ? random.pick(earlier) : undefined;
          const deed = old
            ? { ...old, again: true }
            : { send: (sends += 1), fret: random.below(20), level: random.pick(levels), again: false };
          earlier.push(deed);
          return deed;
        });
        return deeds;
      }),
    }));
  });
}

/**
 * The rules in short: the newest send counts, what was sent before changes nothing, after the hold it is late, and
 * a round that was taken back takes nothing in.
 */
export function foretell(script: Script): Outcome {
  return script.map((phases) => {
    let [voided, revealed, isLate] = [false, false, false];
    const seen = new Set<number>();
    const students = known(phases[0], 'phase').deeds.map((): [string | null, string | null] => [null, null]);
    for (const { deeds, then } of phases) {
      for (const [index, own] of deeds.entries()) {
        for (const { send, fret, level } of own) {
          if (voided || seen.has(send)) continue;
          seen.add(send);
          const kept = known(students[index], 'student');
          kept[isLate ? 1 : 0] = textOf(String(send), fret, level);
        }
      }
      if (then === 'void') voided = true;
      else if (then === 'undo' && voided) voided = false;
      else if (then === 'undo') isLate = false;
      else if (then === 'reveal') [revealed, isLate] = [true, true];
      else if (then === 'wait') isLate = true;
    }
    return { voided, revealed, students };
  });
}

/** Plays it on a running class and a store; `order` decides who comes first, and who waits for the reply. */
export async function play(script: Script, order: number): Promise<{ live: Outcome; stored: Outcome }> {
  const random = new Random(order);
  const store = openStore({ path: ':memory:' });
  try {
    await fillStore(store);
    const count = known(script[0]?.[0], 'phase').deeds.length;
    const ids = Array.from({ length: count }, (_, index) => `student-${String(index)}`);
    await store.classes.commit(
      classId,
      ids.flatMap((id) => [
        { kind: 'student' as const, student: student(id) },
        {
          kind: 'seat' as const,
          seat: seat(`seat-${id}`, { studentId: student(id).id, status: 'in', reason: null }),
        },
      ]),
    );
    let now = 10_000;
    const nothing = () => undefined;
    const running = new RunningClass(known(await store.classes.load(classId), 'class'), {
      store: store.classes,
      publisher: { toStands: nothing, toSeat: nothing, toBoards: nothing, toDesks: nothing },
      clock: { now: () => time(now), after: () => nothing },
      log: { error: nothing, warn: nothing, info: nothing },
      address: () => '',
    });
    let rounds = 0;
    const teach = async (command: Parameters<RunningClass['forDesk']>[0]) => {
      const done = await running.forDesk(command, {
        now: time(now) as Time,
        newId: () => `round-${String((rounds += 1))}`,
      });
      if (!done.ok) throw new Error(`${command.kind}: ${done.error}`);
    };
    for (const phases of script) {
      await teach({ kind: 'ask', exercise: find(), harder: [find(3), find(4)], seconds: null });
      const roundId = known(running.state.rounds.at(-1), 'round').id;
      for (const { deeds, then } of phases) {
        await mixed(deeds, random, (index, deed) => give(running, ids[index] ?? '', roundId, deed, now));
        now += then === 'wait' ? 2000 : 10;
        if (then !== 'wait') await teach({ kind: then });
      }
    }
    running.stop();
    const stored = known(await store.classes.load(classId), 'class');
    return { live: outcomeOf(running.state, ids), stored: outcomeOf(stored, ids) };
  } finally {
    await store.close();
  }
}

/** Each student's deeds in their order, beside those of the others in any. */
async function mixed(
  deeds: readonly (readonly Deed[])[],
  random: Random,
  act: (student: number, deed: Deed) => Promise<unknown>,
): Promise<void> {
  const turns = random.shuffled(deeds.flatMap((own, index) => own.map(() => index)));
  const left = deeds.map((own) => [...own]);
  const underWay: Promise<unknown>[] = [];
  for (const index of turns) {
    const acting = act(index, known(left[index]?.shift(), 'deed'));
    underWay.push(acting);
    if (random.chance(0.4)) await acting;
  }
  await Promise.all(underWay);
}

function give(
  running: RunningClass,
  id: string,
  roundId: RoundId,
  deed: Deed,
  now: number,
): Promise<unknown> {
  const command = {
    kind: 'place' as const,
    roundId,
    sendId: `send-${String(deed.send)}` as SendId,
    ...atLevel({ places: [place(2, deed.fret)] }, deed.level),
    places: [place(2, deed.fret)],
    done: false,
  };
  return running.forStudent(`seat-${id}` as SeatId, command, time(now));
}

function outcomeOf(state: ClassState, ids: readonly string[]): Outcome {
  return state.rounds.map((round) => ({
    voided: round.voided,
    revealed: round.phase === 'revealed',
    students: ids.map((id) =>
      [round.answers, round.late].map((answers) => {
        const own = answers.get(student(id).id);
        return own ? textOf(own.sendId.slice(5), own.places[0]?.fret, levelOf(own)) : null;
      }),
    ) as unknown as (readonly [string | null, string | null])[],
  }));
}
