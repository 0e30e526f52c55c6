import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Playing } from '../../../shared/exercise/heard.ts';
import type { Instrument } from '../../../shared/theory/fretboard.ts';
import type { EarEvent } from '../../listening/events.ts';
import { ClickHere } from './click-here.ts';
import { MicrophoneHere } from './microphone-here.ts';
import { MidiHere, type OnMidi } from './midi-here.ts';
import type { ChosenWay } from './ways.ts';

type Host = ReactiveControllerHost & Pick<HTMLElement, 'isConnected'>;

/** What is told to the screen besides what it draws. */
export interface OnPlay {
  readonly onHeard: (event: EarEvent) => void;
  readonly onMidi: OnMidi;
  readonly onRefused: () => void;
  /** Nothing more comes of what was open. */
  readonly onClosed: () => void;
}

/**
 * What one plays to: opened while its screen is there to be seen and wants it, closed after. Microphone, MIDI and click
 * end together.
 */
export class PlayInput implements ReactiveController {
  readonly microphone: MicrophoneHere;
  readonly midi: MidiHere;
  readonly click = new ClickHere();
  readonly #host: Host;
  readonly #onClosed: () => void;
  /** By which way something is open, or opening. */
  #open: ChosenWay = 'tap';

  constructor(host: Host, { onHeard, onMidi, onRefused, onClosed }: OnPlay) {
    const onNews = () => host.requestUpdate();
    this.microphone = new MicrophoneHere(onNews, onHeard, onRefused);
    this.midi = new MidiHere(onNews, onMidi);
    this.#host = host;
    this.#onClosed = onClosed;
    host.addController(this);
  }

  hostConnected(): void {
    document.addEventListener('visibilitychange', this.#onVisibility);
    this.#host.requestUpdate();
  }

  hostDisconnected(): void {
    document.removeEventListener('visibilitychange', this.#onVisibility);
    this.close();
  }

  /** Each time that the screen is drawn. One that was taken away is drawn once more: then nothing may open again. */
  want(way: ChosenWay): void {
    const wanted = this.#host.isConnected && !document.hidden ? way : 'tap';
    if (wanted === this.#open) return;
    this.close();
    this.#open = wanted;
    if (wanted === 'play') void this.microphone.open();
    if (wanted === 'midi') void this.midi.open();
  }

  listenFor(as: Playing['as'], instrument: Instrument): void {
    this.microphone.listenFor(as, instrument);
    this.midi.listenFor(as, instrument);
  }

  /** `again`: what hindered the microphone may be gone. */
  close(again = false): void {
    this.#open = 'tap';
    this.click.stop();
    this.microphone.close(again);
    this.midi.close();
    this.#onClosed();
  }

  readonly #onVisibility = (): void => {
    this.#host.requestUpdate();
  };
}
