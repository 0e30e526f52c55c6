import { Random } from '../../support/random.ts';
import { evenHand, line, note, roughHand, type Sound } from '../../support/sound/mix.ts';
import { inRoom, type Condition } from '../../support/sound/rooms.ts';
import { guitarNames, loadGuitars, type Guitar } from '../../support/sound/samples.ts';
import { hear, notesOf, type NoteEvent } from './hearing.ts';

export interface NoteFigures {
  readonly played: number;
  readonly right: number;
  /** Accepted though it was not played: an octave or a semitone beside, something else, or one note too many. */
  readonly octave: number;
  readonly semitone: number;
  readonly other: number;
  /** Seconds from the onset to the verdict, of those that were right. */
  readonly times: readonly number[];
  readonly wrong: readonly string[];
}

const lowest = 40;
/** Fret 12 of the thinnest string. */
const highest = 76;

/** Each note of each guitar by itself. */
export async function singleNotes(condition: Condition, times: number): Promise<NoteFigures> {
  const guitars = await loadGuitars();
  return gathered(
    guitarNames.flatMap((name, guitar) =>
      Array.from({ length: highest - lowest + 1 }, (_, at) => lowest + at).flatMap((pitch) =>
        Array.from({ length: times }, (__, time) => {
          const seed = 1000 * (1000 * guitar + pitch) + time;
          const random = new Random(seed);
          const sound = note(guitars[name], pitch, handFor(condition, random), {
            before: 0.5 + 0.1 * random.next(),
          });
          return judged(sound, condition, seed, `${name} ${String(pitch)}`);
        }),
      ),
    ),
  );
}

/** Eighths at 120 beats a minute, each ringing on for so many seconds into the next ones. */
export async function ringingNotes(
  condition: Condition,
  lines: number,
  ringing: number,
): Promise<NoteFigures> {
  const guitars = await loadGuitars();
  return gathered(
    guitarNames.flatMap((name, guitar) =>
      Array.from({ length: lines }, (_, time) => {
        const seed = 77_000 + 1000 * guitar + time;
        const random = new Random(seed);
        const sound = eighths(guitars[name], random, condition, ringing);
        return judged(sound, condition, seed, `${name} line ${String(time)}`);
      }),
    ),
  );
}

/** A melody of sixteen notes in steps and small leaps. */
function eighths(guitar: Guitar, random: Random, condition: Condition, ringing: number): Sound {
  let pitch = 45 + random.below(20);
  const pitches = Array.from({ length: 16 }, () => {
    const step = random.pick([-5, -4, -3, -2, -1, 0, 1, 2, 3, 4, 5, 7, -7]);
    pitch += pitch + step < lowest || pitch + step > highest ? -step : step;
    return pitch;
  });
  return line(guitar, pitches, handFor(condition, random), { before: 0.6, gap: 0.25, ringing });
}

export const handFor = (condition: Condition, random: Random) =>
  condition === 'hard' ? roughHand(random) : evenHand(random);

type Judged = Omit<NoteFigures, 'played'> & { readonly played: number };

function judged(sound: Sound, condition: Condition, seed: number, name: string): Judged {
  const heard = [...notesOf(hear(inRoom(sound.samples, condition, seed), 'line'))];
  const times: number[] = [];
  const wrong: string[] = [];
  const kinds = { octave: 0, semitone: 0, other: 0 };
  for (const played of sound.notes) {
    const found = take(
      heard,
      (event) => Math.abs(event.onset - played.onset) < 0.06 && event.pitch === played.pitch,
    );
    if (found) times.push(found.at - played.onset);
  }
  for (const event of heard) {
    const nearest = sound.notes.toSorted(
      (a, b) => Math.abs(a.onset - event.onset) - Math.abs(b.onset - event.onset),
    )[0];
    const off = event.pitch - (nearest?.pitch ?? 0);
    const late = Math.abs(event.onset - (nearest?.onset ?? 0)) >= 0.06;
    if (off !== 0 && off % 12 === 0) kinds.octave += 1;
    else if (Math.abs(off) === 1) kinds.semitone += 1;
    else kinds.other += 1;
    wrong.push(
      `${name}: ${String(nearest?.pitch)} heard as ${String(event.pitch)}${late ? ' without an onset' : ''} at ${event.onset.toFixed(2)}`,
    );
  }
  return { played: sound.notes.length, right: times.length, ...kinds, times, wrong };
}

function take(events: NoteEvent[], fits: (event: NoteEvent) => boolean): NoteEvent | undefined {
  const at = events.findIndex(fits);
  return at < 0 ? undefined : events.splice(at, 1)[0];
}

function gathered(all: readonly Judged[]): NoteFigures {
  const sum = (value: (one: Judged) => number) => all.reduce((total, one) => total + value(one), 0);
  return {
    played: sum((one) => one.played),
    right: sum((one) => one.right),
    octave: sum((one) => one.octave),
    semitone: sum((one) => one.semitone),
    other: sum((one) => one.other),
    times: all.flatMap((one) => one.times),
    wrong: all.flatMap((one) => one.wrong),
  };
}
