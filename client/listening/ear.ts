import type { MidiNote } from '../../shared/theory/pitch.ts';
import { ChordListener } from './chord-listener.ts';
import type { EarEvent, ListenFor } from './events.ts';
import { decibelsOf, Level } from './level.ts';
import { LineEar } from './line-ear.ts';
import type { Net } from './net.ts';
import { hop, lookLength, Onsets, reach } from './onset.ts';
import { Ring } from './ring.ts';
import type { Onset, Sounding } from './sounding.ts';
import { Tuner } from './tuner.ts';

export interface EarSettings {
  /** Samples a second. */
  readonly sampleRate: number;
  /** The lowest note of the instrument, which sets how long a look has to be. */
  readonly lowest: MidiNote;
  /** Absent while only single notes or tuning are listened for. */
  readonly net: Net | null;
}

/** Seconds of sound that are kept. */
const kept = 1.4;
/** Hops from one level to the next: a tenth of a second. */
const levelEvery = 17;
/** What is struck is so much louder than the room, in decibels. */
const aboveRoom = 6;
/** Seconds that an onset is told too late by the spectrum. */
const lateness = 0.0055;
/** Sound just before and just after an onset, in seconds. */
const beside = 0.046;

/** After so much of a rise the onset is told from loudness: from where it is within so many decibels of what follows. */
const outOfSilence = 12;
const rising = 10;
/** In pieces of 1.5 ms, from so many seconds before the spectrum tells it. */
const pieceLength = 64;
const doubt = 0.01;

/** Listens to sound, chunk by chunk, and says what it hears: pure, without clock or browser. */
export class Ear {
  readonly #sounding: Sounding;
  readonly #onsets: Onsets;
  readonly #look = new Float32Array(lookLength);
  readonly #line: LineEar;
  readonly #chord: ChordListener;
  readonly #tuner: Tuner;
  #mode: ListenFor = 'line';
  #deaf: readonly { readonly from: number; readonly to: number }[] = [];

  constructor({ sampleRate, lowest, net }: EarSettings) {
    this.#sounding = { ring: new Ring(kept * sampleRate), level: new Level(), sampleRate, net };
    this.#onsets = new Onsets(sampleRate);
    this.#line = new LineEar(this.#sounding, lowest);
    this.#chord = new ChordListener(this.#sounding);
    this.#tuner = new Tuner(this.#sounding, lowest);
  }

  listenFor(mode: ListenFor): void {
    this.#mode = mode;
    this.#forget();
  }

  /** The device itself sounds from `from` to `to`, in seconds: nothing counts then. */
  deafBetween(from: number, to: number): void {
    const { ring, sampleRate } = this.#sounding;
    const over = ring.end - kept * sampleRate;
    this.#deaf = [...this.#deaf, { from: from * sampleRate, to: to * sampleRate }].filter(
      (one) => one.to > over,
    );
  }

  /** Takes in the next samples, of any number. */
  feed(samples: Float32Array): readonly EarEvent[] {
    const { ring } = this.#sounding;
    const events: EarEvent[] = [];
    for (let at = 0; at < samples.length;) {
      // Hop by hop, so that what is heard doesn't hang on how the sound is cut.
      const next = Math.min(samples.length, at + hop - (ring.end % hop));
      ring.push(samples.subarray(at, next));
      at = next;
      if (ring.end % hop === 0) events.push(...this.#step());
    }
    return events;
  }

  #step(): readonly EarEvent[] {
    return [...this.#levelEvents(), ...(this.#mode === 'tuning' ? this.#tune() : this.#listen())];
  }

  #levelEvents(): readonly EarEvent[] {
    const { ring, level, sampleRate } = this.#sounding;
    const length = levelEvery * hop;
    if (ring.end % length !== 0) return [];
    const { loudness, clipped } = level.next(ring.read(ring.end - length, new Float32Array(length)));
    return [{ kind: 'level', at: ring.end / sampleRate, loudness, floor: level.floor, clipped }];
  }

  #tune(): readonly EarEvent[] {
    const { ring } = this.#sounding;
    return this.#isDeaf(ring.end - this.#tuner.length, ring.end) ? [] : this.#tuner.step();
  }

  #listen(): readonly EarEvent[] {
    const { ring, sampleRate } = this.#sounding;
    const listener = this.#mode === 'line' ? this.#line : this.#chord;
    if (listener.waits && this.#isDeaf(listener.waits.at, ring.end)) listener.forget();
    const onset = this.#onset();
    if (onset?.isSoft && this.#mode === 'line') this.#line.struckSoftly(onset);
    if (!onset || onset.isSoft) return listener.step();
    const struck: EarEvent = { kind: 'struck', at: ring.end / sampleRate, onset: onset.at / sampleRate };
    return [struck, ...listener.struck(onset), ...listener.step()];
  }

  #onset(): Onset | undefined {
    const { ring, level, sampleRate } = this.#sounding;
    const peak = this.#onsets.next(ring.read(ring.end - lookLength, this.#look));
    if (!peak) return undefined;
    const told = Math.round(ring.end - reach * hop - lookLength / 2 - lateness * sampleRate);
    const length = Math.round(beside * sampleRate);
    const before = decibelsOf(ring.read(told - length, new Float32Array(length)));
    const after = decibelsOf(ring.read(told, new Float32Array(Math.min(length, ring.end - told))));
    const at = after - before > outOfSilence ? this.#risesAt(told, after - rising) : told;
    const isHeard = level.isKnown && after >= level.floor + aboveRoom;
    if (!isHeard || this.#isDeaf(at, ring.end)) return undefined;
    if (!peak.isSoft) level.struck();
    return { at, before, after, ...peak };
  }

  /** Out of silence the onset is where it gets that loud: the spectrum sees it coming. */
  #risesAt(told: number, loudness: number): number {
    const { ring, sampleRate } = this.#sounding;
    const piece = new Float32Array(pieceLength);
    for (let at = told - Math.round(doubt * sampleRate); at < ring.end - pieceLength; at += pieceLength)
      if (decibelsOf(ring.read(at, piece)) > loudness) return at;
    return told;
  }

  #isDeaf(from: number, to: number): boolean {
    return this.#deaf.some((one) => one.from < to && one.to > from);
  }

  #forget(): void {
    this.#line.forget();
    this.#chord.forget();
    this.#tuner.forget();
  }
}
