import type { MidiNote } from '../../shared/theory/pitch.ts';
import { isAltered, obstacle, permission, stateOf, wanted } from './asking.ts';
import type { EarEvent, ListenFor, MicrophoneState } from './events.ts';
import { LineIn } from './line-in.ts';
import type { Listening } from './listening.ts';

/** Whoever ends a listener, a timer or a stream. */
type End = () => void;

/** Sound may come in steps of so many seconds: the shortest that a browser can do costs twice the CPU. */
const latency = 0.03;
/** A track that ends sooner is not asked for again by itself, in milliseconds. */
const shortest = 1000;

/** The device's microphone, its samples gathered in the audio thread and heard in a worker. */
export class MicrophoneListening implements Listening {
  #state: MicrophoneState = obstacle() ?? 'off';
  #device = '';
  #isAltered = false;
  #mode: ListenFor = 'line';
  #lowest = 40 as MidiNote;
  #line: LineIn | null = null;
  /** What was opened for this listening, ended in reverse. */
  #ends: End[] = [];
  /** Each start and stop is another; what comes late from an earlier one is let go. */
  #turn = 0;
  #watch: AbortController | null = null;
  readonly #onState = new Set<() => void>();
  readonly #onHeard = new Set<(event: EarEvent) => void>();

  get state(): MicrophoneState {
    return this.#state;
  }

  get device(): string {
    return this.#device;
  }

  get isAltered(): boolean {
    return this.#isAltered;
  }

  onState(listener: () => void): End {
    this.#onState.add(listener);
    return () => this.#onState.delete(listener);
  }

  onHeard(listener: (event: EarEvent) => void): End {
    this.#onHeard.add(listener);
    return () => this.#onHeard.delete(listener);
  }

  async start(): Promise<void> {
    if (this.#state === 'asking' || this.#line) return;
    const hindrance = obstacle();
    if (hindrance) return this.#become(hindrance);
    this.#turn += 1;
    const turn = this.#turn;
    this.#become('asking');
    try {
      await this.#open(() => turn === this.#turn);
    } catch (error) {
      if (turn !== this.#turn) return;
      this.#release();
      this.#become(stateOf(error));
    }
    if (turn === this.#turn) void this.#watchDevice();
  }

  listenFor(mode: ListenFor, lowest: MidiNote): void {
    this.#mode = mode;
    this.#lowest = lowest;
    this.#line?.listenFor(mode, lowest);
  }

  deafFor(milliseconds: number, later = 0): void {
    this.#line?.deafFor(milliseconds, later);
  }

  stop(): void {
    this.#turn += 1;
    this.#watch?.abort();
    this.#watch = null;
    this.#release();
    this.#become(obstacle() ?? 'off');
  }

  async #open(isWanted: () => boolean): Promise<void> {
    // Made before anything is waited for: browsers let sound begin only at a press.
    const context = new AudioContext({ latencyHint: latency });
    this.#ends.push(() => void context.close());
    const stream = await navigator.mediaDevices.getUserMedia(wanted);
    const [track] = stream.getAudioTracks();
    const end = () => stream.getTracks().forEach((one) => one.stop());
    if (!track || !isWanted()) return end();
    this.#ends.push(end);
    const line = await LineIn.open(
      context,
      stream,
      { mode: this.#mode, lowest: this.#lowest },
      { hear: (events) => this.#hear(events), fail: () => this.#lose() },
    );
    if (!isWanted()) return line.close();
    this.#ends.push(() => line.close());
    this.#line = line;
    this.#device = track.label;
    this.#isAltered = isAltered(track.getSettings());
    this.#follow(track, context);
  }

  #hear(events: readonly EarEvent[]): void {
    for (const event of events) for (const listener of this.#onHeard) listener(event);
  }

  /** Says so when the sound stops coming, and when it comes again. */
  #follow(track: MediaStreamTrack, context: AudioContext): void {
    const opened = performance.now();
    const following = new AbortController();
    const options = { signal: following.signal };
    this.#ends.push(() => following.abort());
    const say = () => this.#become(track.muted || context.state !== 'running' ? 'busy' : 'listening');
    const wake = () => {
      if (context.state !== 'running') void context.resume().catch(() => undefined);
    };
    context.addEventListener('statechange', say, options);
    track.addEventListener('mute', say, options);
    track.addEventListener('unmute', say, options);
    const lose = () => {
      this.#lose();
      if (performance.now() - opened > shortest) void this.#again();
    };
    track.addEventListener('ended', lose, options);
    // Phones stop sound in the background, and some let it begin again only at a press.
    for (const name of ['visibilitychange', 'pointerdown', 'keydown'])
      document.addEventListener(name, wake, options);
    wake();
    if (track.readyState === 'ended') lose();
    else say();
  }

  /** Once it has been asked for: a microphone that is plugged in, a permission that is given or taken back. */
  async #watchDevice(): Promise<void> {
    if (this.#watch) return;
    const watch = new AbortController();
    this.#watch = watch;
    const options = { signal: watch.signal };
    navigator.mediaDevices.addEventListener('devicechange', () => void this.#again(), options);
    const status = await permission();
    status?.addEventListener(
      'change',
      () => {
        if (status.state !== 'granted' && this.#line) this.#lose();
        else if (status.state !== 'denied' && this.#state === 'refused') this.#become('off');
      },
      options,
    );
  }

  /** Listens again where a microphone was lost or missing, unless that would put a question out of the blue. */
  async #again(): Promise<void> {
    if (this.#state !== 'ended' && this.#state !== 'missing') return;
    const devices = await navigator.mediaDevices.enumerateDevices();
    if (!devices.some(({ kind }) => kind === 'audioinput')) return;
    if ((await permission())?.state === 'granted') await this.start();
  }

  #lose(): void {
    this.#turn += 1;
    this.#release();
    this.#become('ended');
  }

  #release(): void {
    this.#line = null;
    for (const end of this.#ends.reverse()) end();
    this.#ends = [];
  }

  #become(state: MicrophoneState): void {
    if (state === this.#state) return;
    this.#state = state;
    for (const listener of this.#onState) listener();
  }
}
