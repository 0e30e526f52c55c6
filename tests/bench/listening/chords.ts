import type { HeardTone } from '../../../shared/exercise/heard.ts';
import { pitchClassOn } from '../../../shared/theory/interval.ts';
import { Random } from '../../support/random.ts';
import { arpeggio, over, strum, type Sound } from '../../support/sound/mix.ts';
import { inRoom, stillRinging, type Condition } from '../../support/sound/rooms.ts';
import { guitarNames, loadGuitars, type Guitar } from '../../support/sound/samples.ts';
import { chordsOf, hear } from './hearing.ts';
import { handFor } from './notes.ts';
import {
  asked,
  isAccepted,
  qualities,
  someChord,
  trueTones,
  verdictOn,
  type PlayedChord,
} from './played-chords.ts';

/** So many of so many. */
export class Share {
  hits = 0;
  of = 0;

  add(isHit: boolean): void {
    this.of += 1;
    if (isHit) this.hits += 1;
  }
}

export interface ChordFigures {
  readonly right: Share;
  /** Another quality on the same root, all of them; and those that differ in one tone. */
  readonly otherQuality: Share;
  readonly nearQuality: Share;
  readonly noThird: Share;
  readonly fretOff: Share;
  readonly blamed: Share;
  readonly arpeggio: Share;
  readonly hints: number[];
  readonly verdicts: number[];
  readonly wrong: string[];
}

const before = 0.5;
const ring = 0.55;

/** So many chords strummed, each asked about in every way; with `wrong`, also played wrong. */
export async function chordFigures(
  condition: Condition,
  count: number,
  playWrong: boolean,
): Promise<ChordFigures> {
  const guitars = await loadGuitars();
  const [right, otherQuality, nearQuality, noThird, fretOff, blamed, arpeggiated] = Array.from(
    { length: 7 },
    () => new Share(),
  ) as [Share, Share, Share, Share, Share, Share, Share];
  const [hints, verdicts, wrong]: [number[], number[], string[]] = [[], [], []];
  for (let at = 0; at < count; at += 1) {
    const seed = 500_000 + at;
    const random = new Random(seed);
    const name = random.pick(guitarNames);
    const chord = someChord(random);
    const exercise = asked(chord, chord.quality);
    const play = (pitches: readonly number[]) =>
      heardTones(strummed(guitars[name], pitches, condition, random), condition, seed);
    const heard = play(chord.pitches);
    if (heard.hint !== undefined) hints.push(heard.hint);
    if (heard.verdict !== undefined) verdicts.push(heard.verdict);
    right.add(isAccepted(exercise, heard.tones, heard.faint));
    if (!isAccepted(exercise, heard.tones, heard.faint))
      wrong.push(
        `${name} ${said(chord)} ${tonesText(trueTones(chord.pitches))} heard ${tonesText(heard.tones)}`,
      );
    for (const quality of qualities) {
      const other = asked(chord, quality);
      const fault = faults(other, trueTones(chord.pitches));
      if (fault === 0) continue;
      otherQuality.add(isAccepted(other, heard.tones, heard.faint));
      if (fault === 1) nearQuality.add(isAccepted(other, heard.tones, heard.faint));
    }
    if (!playWrong) continue;
    for (const [share, pitches] of [
      [noThird, withoutThird(chord)],
      [fretOff, oneFretOff(chord, random)],
    ] as const) {
      if (pitches.length < 2 || isAccepted(exercise, trueTones(pitches))) continue;
      const { tones, faint } = play(pitches);
      share.add(isAccepted(exercise, tones, faint));
      blame(blamed, chord, { tones, faint }, pitches);
    }
    if (at % 4 === 0) {
      const sound = arpeggio(guitars[name], chord.pitches, handFor(condition, random), {
        before,
        gap: 0.2 + 0.4 * random.next(),
      });
      const { tones, faint } = heardTones(sound, condition, seed);
      arpeggiated.add(isAccepted(exercise, tones, faint));
    }
  }
  return {
    right,
    otherQuality,
    nearQuality,
    noThird,
    fretOff,
    blamed,
    arpeggio: arpeggiated,
    hints,
    verdicts,
    wrong,
  };
}

/** A chord while a guitar beside plays another one, 12 dB softer. */
export async function besideAnother(count: number): Promise<Share> {
  const guitars = await loadGuitars();
  const share = new Share();
  for (let at = 0; at < count; at += 1) {
    const seed = 900_000 + at;
    const random = new Random(seed);
    const [name, other] = [random.pick(guitarNames), random.pick(guitarNames)];
    const [chord, theirs] = [someChord(random), someChord(random)];
    const hand = handFor('microphone-like', random);
    const mine = strum(guitars[name], chord.pitches, hand, { before, ring });
    const neighbour = strum(guitars[other], theirs.pitches, hand, { before: 0, ring: before + ring });
    const sound = over(mine, neighbour.samples, -12, 0.2 + 0.6 * random.next());
    const { tones, faint } = heardTones(sound, 'microphone-like', seed);
    share.add(isAccepted(asked(chord, chord.quality), tones, faint));
  }
  return share;
}

/** In "hard" another chord rings on from a second before. */
function strummed(guitar: Guitar, pitches: readonly number[], condition: Condition, random: Random): Sound {
  const hand = handFor(condition, random);
  const order = random.chance(0.8) ? pitches : pitches.toReversed();
  if (condition !== 'hard') return strum(guitar, order, hand, { before, ring });
  const later = before + 0.7 + 0.6 * random.next();
  const now = strum(guitar, order, hand, { before: later, ring });
  const earlier = strum(guitar, someChord(random).pitches, hand, { before, ring: later - before + ring });
  return over(now, stillRinging(earlier.samples, later, random), 0);
}

interface HeardTones {
  readonly tones: readonly HeardTone[];
  readonly faint: readonly HeardTone[];
  /** Seconds after the last chord's first onset. */
  readonly hint: number | undefined;
  readonly verdict: number | undefined;
}

/** The last verdict in it. */
function heardTones(sound: Sound, condition: Condition, seed: number): HeardTones {
  const events = chordsOf(hear(inRoom(sound.samples, condition, seed), 'chord'));
  const last = sound.notes.at(-1)?.onset ?? 0;
  const first = sound.notes.find(({ onset }) => onset > last - 0.1)?.onset ?? 0;
  const since = events.filter(({ at }) => at > first + 0.1);
  const final = since.findLast(({ isFinal }) => isFinal);
  const hint = since.find(({ isFinal }) => !isFinal);
  return {
    tones: final?.tones ?? [],
    faint: final?.faint ?? [],
    hint: hint && hint.at - first,
    verdict: final && final.at - first,
  };
}

/** How many tones lie between what sounds and the chord; 0 where it is the chord. */
function faults(exercise: ReturnType<typeof asked>, tones: readonly HeardTone[]): number {
  const verdict = verdictOn(exercise, tones);
  if (verdict.kind === 'right') return 0;
  const fault = 'heard' in verdict && verdict.heard?.kind === 'chord' ? verdict.heard : undefined;
  return fault ? Math.max(fault.missing.length, fault.foreign.length) : Infinity;
}

function withoutThird({ pitches, thirds }: PlayedChord): readonly number[] {
  return thirds.includes(true) ? pitches.filter((_, at) => !thirds[at]) : [];
}

function oneFretOff({ pitches }: PlayedChord, random: Random): readonly number[] {
  const string = random.below(pitches.length);
  const by = random.chance(0.5) ? 1 : -1;
  return pitches.map((pitch, at) => (at === string ? pitch + by : pitch));
}

/** Each tone that is called missing or foreign: whether it truly is. */
function blame(
  share: Share,
  chord: PlayedChord,
  { tones, faint }: Pick<HeardTones, 'tones' | 'faint'>,
  pitches: readonly number[],
): void {
  if (tones.length === 0) return;
  const verdict = verdictOn(asked(chord, chord.quality), tones, faint);
  if (!('heard' in verdict) || verdict.heard?.kind !== 'chord') return;
  const sounding = new Set(trueTones(pitches).map(({ pitchClass }) => pitchClass));
  for (const degree of verdict.heard.missing) share.add(!sounding.has(pitchClassOn(chord.root, degree)));
  for (const tone of verdict.heard.foreign) share.add(sounding.has(tone));
}

const said = ({ root, quality }: PlayedChord) => `${root.letter}${String(root.alteration)} ${quality}`;
const tonesText = (tones: readonly HeardTone[]) =>
  tones
    .map(({ pitchClass }) => pitchClass)
    .sort((a, b) => a - b)
    .join(' ') || '—';
