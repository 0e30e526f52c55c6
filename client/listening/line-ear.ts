import { PitchDetector } from 'pitchy';
import { frequencyOf, type MidiNote } from '../../shared/theory/pitch.ts';
import type { EarEvent } from './events.ts';
import { chanceOf, harmonics, newestOf } from './net-look.ts';
import { isPlucked, noteShape, ringingShape } from './plucked.ts';
import type { Onset, Sounding } from './sounding.ts';

/**
 * So many looks in a row must agree to within so many cents, each so clear: a rule of 4 looks is 50 ms faster, but takes
 * octaves for the note, and speech for music.
 */
const agreeing = 10;
const spread = 6;
const leastClarity = 0.85;
/** And so clear in the middle, if the net isn't so sure. */
const leastMeanClarity = 0.92;
const throughNoise = 0.97;
/** Where no note rings, one is so much louder than what was before it, in decibels, and the spectrum grows by so much. */
const outOfSilence = 15;
const leastGrowth = 0.25;
/** Further beside a note than an instrument is out of tune, in cents. */
const outOfTune = 35;
/** The same note again, or one of its harmonics, is at least so much louder than what is left of it, in decibels. */
const struckAgain = 1.5;
/** An onset is known to within this, in seconds. */
const doubt = 0.012;
/** What still sounds so little below the new note can make its pitch look otherwise, in decibels. */
const ringingBelow = 20;
/** Notes that may still ring, and for how long, in seconds. */
const stillRinging = { notes: 4, seconds: 3 };
/** From one note of a line to the next, at most, where the net alone has to tell it. */
const inOneLine = 1;
/** When the net is asked, and when the note is given up, in seconds after the onset. */
const netAfter = 0.2;
const givenUpAfter = 0.8;
/** The net needs so much sound at least. */
const netShortest = 0.1;
/** The net alone tells a note that is so likely; so likely it is no harmonic of what rings. */
const likely = 0.4;
const noHarmonic = 0.7;
/** A note that comes out of silence is as likely to the net, within so many seconds of its onset: a voice isn't. */
const leastLikely = 0.3;
const likelyWithin = 0.3;
/** What comes after other sound that was no note has to be likelier. */
const surely = 0.9;
/** From one note to the next, in seconds. */
const fastest = 0.09;
const fastestAgain = 0.16;
/** What comes just after a click, or a knock, and is by so much louder, is the note, in decibels. */
const louder = 3;
/** Above the frets of any instrument. */
const highest = 100;

interface Look {
  readonly pitch: number;
  readonly clarity: number;
}

interface Pending {
  readonly onset: Onset;
  /** Pitches in fractions of a semitone, with their clarity. */
  readonly looks: Look[];
  /** What the looks agreed on, though what still rings could pass for it. */
  deceptive: Look | undefined;
  /** The net has been asked. */
  asked: boolean;
}

const pendingFrom = (onset: Onset): Pending => ({ onset, looks: [], deceptive: undefined, asked: false });

type NoteEvent = EarEvent & { readonly kind: 'note' };

/** Hears single notes one after another: at most one for each onset. */
export class LineEar {
  readonly #sounding: Sounding;
  readonly #lowest: number;
  readonly #detector: PitchDetector<Float32Array>;
  readonly #look: Float32Array;
  #pending: Pending | undefined;
  /** The last notes, newest first. */
  #heard: readonly { readonly pitch: number; readonly onset: number }[] = [];

  constructor(sounding: Sounding, lowest: MidiNote) {
    this.#sounding = sounding;
    this.#lowest = lowest - 1;
    this.#look = new Float32Array(windowFor(lowest, sounding.sampleRate));
    this.#detector = PitchDetector.forFloat32Array(this.#look.length);
  }

  get waits(): Onset | undefined {
    return this.#pending?.onset;
  }

  /** Something was struck; what was struck before it is decided at once, or never. */
  struck(onset: Onset): readonly EarEvent[] {
    const pending = this.#pending;
    const seconds = pending ? (onset.at - pending.onset.at) / this.#sounding.sampleRate : 0;
    // Nobody plays that fast: it is the same string, still swinging in, or the finger before it.
    const isLouder = pending && onset.after > pending.onset.after + louder;
    const isStronger =
      pending && onset.growth > pending.onset.growth && (isLouder || this.#isAfterNote(onset));
    if (pending && seconds < fastest && !isStronger) return [];
    const late =
      pending && !pending.asked && seconds >= netShortest ? this.#fromNet(pending, seconds) : undefined;
    this.#pending = pendingFrom(onset);
    return late ? this.#told(late) : [];
  }

  /** Something may have been struck: within a line the net is asked, if nothing surer waits. */
  struckSoftly(onset: Onset): void {
    const pending = this.#pending;
    const isFree =
      !pending || (pending.asked && onset.at - pending.onset.at >= fastest * this.#sounding.sampleRate);
    if (isFree && this.#mayRing(onset) && this.#isAfterNote(onset, inOneLine))
      this.#pending = pendingFrom(onset);
  }

  forget(): void {
    this.#pending = undefined;
  }

  /** One hop later. */
  step(): readonly EarEvent[] {
    const pending = this.#pending;
    if (!pending) return [];
    const { ring, sampleRate } = this.#sounding;
    const seconds = (ring.end - pending.onset.at) / sampleRate;
    const event = this.#fromLooks(pending) ?? this.#whenDue(pending, seconds);
    if (event || seconds > givenUpAfter) this.#pending = undefined;
    return event ? this.#told(event) : [];
  }

  /** The same note so soon after is one string, still swinging in. */
  #told(event: NoteEvent): readonly NoteEvent[] {
    const { pitch, onset } = event;
    const last = this.#heard[0];
    if (last?.pitch === pitch && onset - last.onset < fastestAgain) return [];
    this.#heard = [{ pitch, onset }, ...this.#heard].slice(0, stillRinging.notes);
    return [event];
  }

  #fromLooks(pending: Pending): NoteEvent | undefined {
    const { ring, sampleRate } = this.#sounding;
    const from = ring.end - this.#look.length;
    if (pending.onset.isSoft || from < pending.onset.at - doubt * sampleRate) return undefined;
    const [frequency, clarity] = this.#detector.findPitch(ring.read(from, this.#look), sampleRate);
    pending.looks.push({ pitch: 69 + 12 * Math.log2(frequency / 440), clarity });
    const found = agreed(pending.looks);
    if (!found) return undefined;
    const pitch = Math.round(found.pitch);
    if (pitch < this.#lowest || pitch > highest) return undefined;
    // A look of the net costs a spectrum: at most once for each of ours.
    let told: number | undefined;
    const chance = () => (told ??= chanceOf(this.#sounding, pending.onset, pitch));
    const asksNet = this.#sounding.net && !pending.asked && this.#mayRing(pending.onset);
    if (asksNet && (this.#mayDeceive(pitch) || chance() < leastLikely)) {
      pending.deceptive = found;
      return undefined;
    }
    const isInTune = Math.abs(found.pitch - pitch) <= outOfTune / 100;
    return isInTune &&
      this.#isClear(found, chance) &&
      this.#isStruck(pending.onset, pitch) &&
      this.#isLikely(pending.onset, chance)
      ? this.#note(pending, found)
      : undefined;
  }

  /** Noise makes a pitch less clear; the net hears through it. */
  #isClear({ clarity }: Look, chance: () => number): boolean {
    return clarity >= leastMeanClarity || (this.#sounding.net !== null && chance() >= throughNoise);
  }

  /** The net has learned what is no guitar. Beside others that ring it was asked before. */
  #isLikely(onset: Onset, chance: () => number): boolean {
    const { ring, sampleRate, net } = this.#sounding;
    if (!net || this.#mayRing(onset)) return true;
    if ((ring.end - onset.at) / sampleRate > likelyWithin) return false;
    return chance() >= (comesFromSilence(onset) ? leastLikely : surely);
  }

  /**
   * What still rings can pass for the new note: itself, or, mixed with it, a note whose harmonic it is. The net then says
   * what is new.
   */
  #mayDeceive(pitch: number): boolean {
    return this.#heard.some((old) => isHarmonicOf(old.pitch, pitch));
  }

  #whenDue(pending: Pending, seconds: number): NoteEvent | undefined {
    if (pending.asked || seconds < netAfter) return undefined;
    pending.asked = true;
    return this.#fromNet(pending, netAfter);
  }

  /** Only where notes ring: by itself a note is told by its pitch, and what isn't then is speech, or a knock. */
  #fromNet(pending: Pending, length: number): NoteEvent | undefined {
    const { onset } = pending;
    const { net } = this.#sounding;
    if (!net || !this.#isAfterNote(onset, inOneLine)) return undefined;
    const fresh = newestOf(this.#sounding, net, onset, length);
    const rings = this.#mayRing(onset);
    const isAgain = fresh?.pitch === this.#heard[0]?.pitch;
    // A string that swings on beats with the others, and seems to be struck softly again.
    if (onset.isSoft && isAgain) return undefined;
    const sureFrom = !rings || onset.isSoft ? surely : isAgain ? noHarmonic : likely;
    const isSure = fresh !== undefined && fresh.clarity >= sureFrom;
    if (!isSure && (onset.isSoft || !rings)) return undefined;
    const found = this.#newOrAgain(fresh, pending.deceptive);
    return found && (isSure || this.#isStruck(onset, Math.round(found.pitch)))
      ? this.#note(pending, found)
      : undefined;
  }

  /** Where nothing is new beside what rings, or only a harmonic of it, the last note was struck again. */
  #newOrAgain(found: Look | undefined, deceptive: Look | undefined): Look | undefined {
    const last = this.#heard[0];
    const look = found ?? deceptive;
    if (!look || !last || (found && found.clarity >= noHarmonic)) return look;
    const [low, high] = found ? [last.pitch, look.pitch] : [look.pitch, last.pitch];
    return isHarmonicOf(high, low) ? { ...look, pitch: last.pitch } : look;
  }

  /** A voice has pitches too, but sets in softly, after other sound of its own, and swells. */
  #isStruck(onset: Onset, pitch: number): boolean {
    const { ring, sampleRate } = this.#sounding;
    const rise = onset.after - onset.before;
    const rings = this.#mayRing(onset);
    if (!rings && !this.#sounding.net && !comesFromSilence(onset)) return false;
    const last = this.#heard[0];
    if (last && rise < struckAgain && harmonics.includes(pitch - last.pitch)) return false;
    const samples = ring.read(onset.at, new Float32Array(ring.end - onset.at));
    return isPlucked(samples, sampleRate, rings ? ringingShape : noteShape);
  }

  #mayRing(onset: Onset): boolean {
    return this.#isAfterNote(onset) && onset.before > onset.after - ringingBelow;
  }

  #isAfterNote({ at }: Onset, seconds = stillRinging.seconds): boolean {
    const last = this.#heard[0];
    return last !== undefined && at / this.#sounding.sampleRate - last.onset < seconds;
  }

  #note({ onset }: Pending, found: { readonly pitch: number; readonly clarity: number }): NoteEvent {
    const { ring, sampleRate } = this.#sounding;
    const pitch = Math.round(found.pitch);
    return {
      kind: 'note',
      at: ring.end / sampleRate,
      onset: onset.at / sampleRate,
      pitch: pitch as MidiNote,
      cents: Math.round(100 * (found.pitch - pitch)),
      confidence: Math.min(1, Math.max(0, found.clarity)),
    };
  }
}

/** Whether the first is a harmonic of the second, or the same. */
function isHarmonicOf(high: number, low: number): boolean {
  const ratio = 2 ** ((high - low) / 12);
  const nearest = Math.round(ratio);
  return nearest >= 1 && Math.abs(12 * Math.log2(ratio / nearest)) < 0.4;
}

function comesFromSilence({ before, after, growth }: Onset): boolean {
  return after - before >= outOfSilence && growth >= leastGrowth;
}

function agreed(looks: readonly Look[]): Look | undefined {
  const last = looks.slice(-agreeing);
  if (last.length < agreeing || last.some(({ clarity }) => clarity < leastClarity)) return undefined;
  const pitches = last.map(({ pitch }) => pitch).sort((a, b) => a - b);
  const middle = pitches[agreeing >> 1] ?? 0;
  if (pitches.some((pitch) => Math.abs(pitch - middle) > spread / 100)) return undefined;
  return { pitch: middle, clarity: last.reduce((sum, { clarity }) => sum + clarity, 0) / agreeing };
}

/** A power of two that holds two periods of the lowest note, 2048 at least. */
function windowFor(lowest: MidiNote, sampleRate: number): number {
  const periods = (2 * sampleRate) / frequencyOf(lowest);
  return Math.max(2048, 2 ** Math.ceil(Math.log2(periods)));
}
