import type { MidiNote } from '../../shared/theory/pitch.ts';
import { Asked, Listeners } from '../lib/asked.ts';
import { isAltered, obstacle, permission, stateOf, wanted } from './asking.ts';
import type { EarEvent, ListenFor, MicrophoneState } from './events.ts';
import { LineIn } from './line-in.ts';
import type { Listening } from './listening.ts';

/** Whoever ends a listener, a timer or a stream. */
type End = () => void;

/** Sound may come in steps of so many seconds: the shortest that a browser can do costs twice the CPU. */
const latency = 0.03;
/** Some browsers take a second or two until sound comes; after so many milliseconds something is the matter. */
const patience = 4000;
/** A track that ends sooner is not asked for again by itself, in milliseconds. */
const shortest = 1000;

/** The device's microphone, its samples gathered in the audio thread and heard in a worker. */
export class MicrophoneListening extends Asked<MicrophoneState> implements Listening {
  #device = '';
  #isAltered = false;
  #mode: ListenFor = 'line';
  #lowest = 40 as MidiNote;
  #line: LineIn | null = null;
  /** What was opened for this listening, ended in reverse. */
  #ends: End[] = [];
  #watch: AbortController | null = null;
  readonly #onHeard = new Listeners<EarEvent>();

  constructor() {
    super({ obstacle, stateOf });
  }

  get device(): string {
    return this.#device;
  }

  get isAltered(): boolean {
    return this.#isAltered;
  }

  onHeard(listener: (event: EarEvent) => void): End {
    return this.#onHeard.add(listener);
  }

  listenFor(mode: ListenFor, lowest: MidiNote): void {
    this.#mode = mode;
    this.#lowest = lowest;
    this.#line?.listenFor(mode, lowest);
  }

  deafFor(milliseconds: number, later = 0): void {
    this.#line?.deafFor(milliseconds, later);
  }

  override stop(): void {
    this.#watch?.abort();
    this.#watch = null;
    super.stop();
  }

  protected override get isOpen(): boolean {
    return this.#line !== null;
  }

  protected override async open(isWanted: () => boolean): Promise<void> {
    void this.#watchDevice();
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
      {
        hear: (events) => events.forEach((event) => this.#onHeard.tell(event)),
        fail: () => this.end('ended'),
      },
    );
    if (!isWanted()) return line.close();
    this.#ends.push(() => line.close());
    this.#line = line;
    this.#device = track.label;
    this.#isAltered = isAltered(track.getSettings());
    wake(context);
    await Promise.race([line.begun, new Promise((resolve) => setTimeout(resolve, patience))]);
    if (isWanted()) this.#follow(track, context);
  }

  protected override release(): void {
    this.#line = null;
    for (const end of this.#ends.reverse()) end();
    this.#ends = [];
  }

  /** Says so when the sound stops coming, and when it comes again. */
  #follow(track: MediaStreamTrack, context: AudioContext): void {
    const opened = performance.now();
    const following = new AbortController();
    const options = { signal: following.signal };
    this.#ends.push(() => following.abort());
    const say = () => this.become(track.muted || context.state !== 'running' ? 'busy' : 'listening');
    context.addEventListener('statechange', say, options);
    track.addEventListener('mute', say, options);
    track.addEventListener('unmute', say, options);
    const lose = () => {
      this.end('ended');
      if (performance.now() - opened > shortest) void this.#again();
    };
    track.addEventListener('ended', lose, options);
    // Phones stop sound in the background, and some let it begin again only at a press.
    for (const name of ['visibilitychange', 'pointerdown', 'keydown'])
      document.addEventListener(name, () => wake(context), options);
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
        if (status.state !== 'granted' && this.#line) this.end('ended');
        else if (status.state !== 'denied' && this.state === 'refused') this.become('off');
      },
      options,
    );
  }

  /** Listens again where a microphone was lost or missing, unless that would put a question out of the blue. */
  async #again(): Promise<void> {
    if (this.state !== 'ended' && this.state !== 'missing') return;
    const devices = await navigator.mediaDevices.enumerateDevices();
    if (!devices.some(({ kind }) => kind === 'audioinput')) return;
    if ((await permission())?.state === 'granted') await this.start();
  }
}

function wake(context: AudioContext): void {
  if (context.state !== 'running') void context.resume().catch(() => undefined);
}
