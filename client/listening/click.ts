/** Beats a minute that a click can give (the range of a common metronome, common practice, no source). */
export const slowestTempo = 40;
export const fastestTempo = 208;

/** How often clicks are planned, in milliseconds, and how far ahead, in seconds. */
const every = 50;
const ahead = 0.2;
/** A click lasts so many seconds, and its gain is at most this: softer than a strum. */
const length = 0.03;
const gain = 0.25;
/** The first clicks come in softly, over so many seconds. */
const fadeIn = 1.5;

/** Keeps a tempo within what can be clicked. */
export function tempoWithin(bpm: number): number {
  return Math.min(fastestTempo, Math.max(slowestTempo, Math.round(bpm)));
}

/**
 * The clicks that are due up to `until`, and the one after them, in seconds. After a pause of the page what was missed
 * is left out, and the beat is kept.
 */
export function clicksUntil(
  until: number,
  { next, now, bpm }: { readonly next: number; readonly now: number; readonly bpm: number },
): { readonly due: readonly number[]; readonly next: number } {
  const beat = 60 / bpm;
  const missed = Math.max(0, Math.ceil((now - next) / beat));
  const first = next + missed * beat;
  const count = Math.max(0, Math.floor((until - first) / beat) + 1);
  return {
    due: Array.from({ length: count }, (_, index) => first + index * beat),
    next: first + count * beat,
  };
}

/** Between two notes of the scale, in hertz. */
const frequency = 1614;

/** One tick: there at once, gone before the note that it is for is heard. From −1 to 1. */
export function tick(sampleRate: number): Float32Array<ArrayBuffer> {
  return Float32Array.from({ length: Math.round(length * sampleRate) }, (_, at) => {
    const time = at / sampleRate;
    const envelope = Math.min(1, time / 0.002) * 0.001 ** (time / length);
    return envelope * Math.sin(2 * Math.PI * frequency * time);
  });
}

/**
 * A click of this device, by its audio clock. Who listens isn't made deaf for it: it is too short to be taken for a note
 * or a chord, and deaf on each beat they would miss whatever is played to it.
 */
export class Click {
  readonly #context = new AudioContext();
  readonly #volume: GainNode;
  readonly #tick: AudioBuffer;
  readonly #timer: number;
  #bpm: number;
  #next: number;

  /** To be made at a press, where browsers let sound begin. */
  constructor(bpm: number) {
    this.#bpm = tempoWithin(bpm);
    const { sampleRate, currentTime, destination } = this.#context;
    this.#volume = new GainNode(this.#context, { gain: 0.1 * gain });
    this.#volume.gain.setValueAtTime(0.1 * gain, currentTime);
    this.#volume.gain.linearRampToValueAtTime(gain, currentTime + fadeIn);
    this.#volume.connect(destination);
    const samples = tick(sampleRate);
    this.#tick = new AudioBuffer({ length: samples.length, sampleRate });
    this.#tick.copyToChannel(samples, 0);
    this.#next = currentTime + ahead / 2;
    this.#timer = window.setInterval(() => this.#plan(), every);
    this.#plan();
  }

  get bpm(): number {
    return this.#bpm;
  }

  /** From the click after the next on. */
  set bpm(bpm: number) {
    this.#bpm = tempoWithin(bpm);
  }

  stop(): void {
    clearInterval(this.#timer);
    const { currentTime } = this.#context;
    this.#volume.gain.cancelScheduledValues(currentTime);
    this.#volume.gain.setTargetAtTime(0, currentTime, 0.01);
    setTimeout(() => void this.#context.close(), 100);
  }

  #plan(): void {
    const now = this.#context.currentTime;
    const { due, next } = clicksUntil(now + ahead, { next: this.#next, now, bpm: this.#bpm });
    this.#next = next;
    for (const at of due) {
      const source = new AudioBufferSourceNode(this.#context, { buffer: this.#tick });
      source.connect(this.#volume);
      source.start(at);
    }
  }
}
