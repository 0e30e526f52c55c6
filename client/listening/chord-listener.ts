import type { HeardTone } from '../../shared/exercise/heard.ts';
import { lookBack } from './bins.ts';
import { hearChord, type ChordHeard } from './chord-ear.ts';
import type { EarEvent } from './events.ts';
import { chordShape, isPlucked } from './plucked.ts';
import type { Onset, Sounding } from './sounding.ts';

/** A hint and a verdict, in seconds after the first string. */
const hintAfter = 0.25;
const verdictAfter = 0.4;
/** Strings struck within this are one strum; later ones are an arpeggio, if not so late that something new begins. */
const oneStrum = 0.12;
const newAfter = 1.2;
/** So many notes at once are a strum, which stands for itself. */
const strummed = 3;
/** Of an arpeggio so many strings can't be struck before the next one is, in seconds, if that comes so late. */
const slowest = 0.2;
/** One tone alone counts where it is so sure: speech has some that are less. */
const sure = 0.8;
/** The spectrum of a strum grows by so much; what grows less is strings beating with each other. */
const leastGrowth = 0.1;

interface Pending {
  readonly onset: Onset;
  hint: ChordHeard | undefined;
  /** Where something else was struck before its verdict. */
  overtaken: number | undefined;
}

interface Gathered {
  /** Of its first tone, and of its last. */
  readonly onset: number;
  readonly last: number;
  readonly tones: readonly HeardTone[];
  readonly faint: readonly HeardTone[];
  readonly isDoubtful: boolean;
  /** Struck at once: what comes after it is something new. */
  readonly isStrum: boolean;
}

/** Hears tones together: strummed at once, or one after another and left to ring. */
export class ChordListener {
  readonly #sounding: Sounding;
  #pending: readonly Pending[] = [];
  #gathered: Gathered | undefined;
  /** When something was last struck. */
  #last = -Infinity;

  constructor(sounding: Sounding) {
    this.#sounding = sounding;
  }

  get waits(): Onset | undefined {
    return this.#pending[0]?.onset;
  }

  struck(onset: Onset): readonly EarEvent[] {
    const { sampleRate } = this.#sounding;
    if (onset.at - this.#last < oneStrum * sampleRate || onset.growth < leastGrowth) return [];
    this.#last = onset.at;
    for (const one of this.#pending) one.overtaken ??= onset.at;
    const decided = this.#pending.flatMap((one) => (one.hint ? this.#verdict(one, one.hint) : []));
    this.#pending = [
      ...this.#pending.filter((one) => !one.hint),
      { onset, hint: undefined, overtaken: undefined },
    ];
    return decided;
  }

  forget(): void {
    this.#pending = [];
    this.#gathered = undefined;
    this.#last = -Infinity;
  }

  /** One hop later. */
  step(): readonly EarEvent[] {
    return this.#pending.flatMap((one) => this.#stepOne(one));
  }

  #stepOne(pending: Pending): readonly EarEvent[] {
    const { ring, sampleRate } = this.#sounding;
    const seconds = (ring.end - pending.onset.at) / sampleRate;
    if (!pending.hint && seconds >= hintAfter) {
      const hint = this.#hear(pending, hintAfter);
      if (!hint) return this.#drop(pending);
      pending.hint = hint;
      return pending.overtaken !== undefined
        ? [...this.#drop(pending), ...this.#verdict(pending, hint)]
        : this.#hinted(pending, hint);
    }
    if (seconds < verdictAfter) return [];
    const heard = this.#hear(pending, verdictAfter);
    this.#drop(pending);
    return heard ? this.#verdict(pending, heard) : [];
  }

  #drop(pending: Pending): readonly EarEvent[] {
    this.#pending = this.#pending.filter((one) => one !== pending);
    return [];
  }

  #hear({ onset, overtaken }: Pending, length: 0.25 | 0.4): ChordHeard | undefined {
    const { ring, sampleRate, net } = this.#sounding;
    if (!net) return undefined;
    const before = Math.ceil(lookBack * sampleRate);
    const after = Math.round(length * sampleRate);
    const samples = ring.read(onset.at - before, new Float32Array(before + after));
    const alone = Math.min(after, (overtaken ?? Infinity) - onset.at);
    if (!isPlucked(samples.subarray(before, before + alone), sampleRate, chordShape)) return undefined;
    return hearChord({ samples, onsetAt: before, sampleRate, net, length });
  }

  #hinted({ onset }: Pending, heard: ChordHeard): readonly EarEvent[] {
    const gathered = this.#with({ onset, heard, overtaken: undefined });
    return gathered ? [this.#event(gathered, false)] : [];
  }

  /** One tone alone may be the first of an arpeggio, but is no chord yet: no verdict. */
  #verdict({ onset, overtaken }: Pending, heard: ChordHeard): readonly EarEvent[] {
    const gathered = this.#with({ onset, heard, overtaken });
    if (!gathered) return [];
    this.#gathered = gathered;
    return [this.#event(gathered, gathered.tones.length > 1)];
  }

  #with({
    onset: { at },
    heard,
    overtaken,
  }: Pick<Pending, 'onset' | 'overtaken'> & { readonly heard: ChordHeard }): Gathered | undefined {
    const { faint, isDoubtful, isChord, notes } = heard;
    const tones =
      heard.tones.length > 1 ? heard.tones : heard.tones.filter(({ confidence }) => confidence >= sure);
    if (tones.length === 0) return undefined;
    const { sampleRate } = this.#sounding;
    const struck = Math.max(tones.length, notes.filter((chance) => chance >= 0.5).length);
    const isStrum = struck >= strummed && (overtaken ?? Infinity) - at >= slowest * sampleRate;
    const before =
      this.#gathered && at - this.#gathered.last < newAfter * sampleRate ? this.#gathered : undefined;
    if (!before || before.isStrum || isStrum)
      return isChord || !(before?.isStrum || isStrum)
        ? { onset: at, last: at, tones, faint, isDoubtful, isStrum }
        : undefined;
    return {
      onset: before.onset,
      last: at,
      tones: together(before.tones, tones),
      faint: together(before.faint, faint),
      isDoubtful: before.isDoubtful || isDoubtful,
      isStrum,
    };
  }

  #event({ onset, tones, faint, isDoubtful }: Gathered, isFinal: boolean): EarEvent {
    const { ring, sampleRate } = this.#sounding;
    return {
      kind: 'chord',
      at: ring.end / sampleRate,
      onset: onset / sampleRate,
      isFinal,
      tones,
      faint: faint.filter((tone) => tones.every(({ pitchClass }) => pitchClass !== tone.pitchClass)),
      isDoubtful,
    };
  }
}

/** Both, each tone once, as surely as it was heard best. */
function together(some: readonly HeardTone[], more: readonly HeardTone[]): readonly HeardTone[] {
  const best = new Map(some.map((tone) => [tone.pitchClass, tone]));
  for (const tone of more)
    if (tone.confidence > (best.get(tone.pitchClass)?.confidence ?? 0)) best.set(tone.pitchClass, tone);
  return [...best.values()].sort((a, b) => a.pitchClass - b.pitchClass);
}
