import type { Playing } from '../../../shared/exercise/heard.ts';
import { midiAt, place, stringNumbers, type Instrument } from '../../../shared/theory/fretboard.ts';
import type { MidiNote } from '../../../shared/theory/pitch.ts';
import { along } from '../../components/sound/level-wedge.ts';
import type { EarEvent, MicrophoneState } from '../../listening/events.ts';
import { openListening, type Listening } from '../../listening/listening.ts';
import { isTooLoud } from '../../listening/room.ts';

/** A room is too loud once it has been so for so long, in seconds. */
const loudFor = 3;
/** The level moves in so many steps: not every tenth of a second is worth drawing. */
const steps = 12;

/** The microphone of one screen, while it is wanted: how it stands, how loud it is, what it hears. */
export class MicrophoneHere {
  /** Known at once where no press could change it. */
  state: MicrophoneState = isSecureContext ? 'off' : 'insecure';
  /** From 0 to 1. */
  level = 0;
  tooLoud = false;

  readonly #onNews: () => void;
  readonly #onHeard: (event: EarEvent) => void;
  readonly #onRefused: () => void;
  #listening: Listening | null = null;
  #as: Playing['as'] = 'line';
  #lowest = 0 as MidiNote;
  #quietAt = 0;
  #ends: (() => void)[] = [];
  /** Each opening is another; one that was given up meanwhile ends. */
  #turn = 0;

  /** `onNews`: something that is drawn has changed. */
  constructor(onNews: () => void, onHeard: (event: EarEvent) => void, onRefused: () => void) {
    this.#onNews = onNews;
    this.#onHeard = onHeard;
    this.#onRefused = onRefused;
  }

  /** Nothing hinders it that is known of. */
  get isWell(): boolean {
    return ['off', 'asking', 'listening'].includes(this.state);
  }

  /** Only another wish is passed on: the ear would forget what it is just hearing. */
  listenFor(as: Playing['as'], instrument: Instrument): void {
    const open = stringNumbers(instrument).map((string) => midiAt(instrument, place(string, 0)));
    const lowest = Math.min(...open) as MidiNote;
    if (as === this.#as && lowest === this.#lowest) return;
    this.#as = as;
    this.#lowest = lowest;
    this.#listening?.listenFor(as, lowest);
  }

  async open(): Promise<void> {
    const turn = this.#turn;
    this.#quietAt = 0;
    try {
      const listening = await openListening();
      if (turn !== this.#turn) return;
      this.#listening = listening;
      this.#ends = [
        listening.onState(() => this.#become(listening.state)),
        listening.onHeard((event) => {
          if (event.kind === 'level') this.#measure(event);
          this.#onHeard(event);
        }),
      ];
      listening.listenFor(this.#as, this.#lowest);
      this.#become(listening.state);
      await listening.start();
    } catch {
      if (turn === this.#turn) this.#become('unsupported');
    }
  }

  /** What hinders it stays known, unless it is to be tried again. */
  close(again = false): void {
    this.#turn += 1;
    for (const end of this.#ends) end();
    this.#ends = [];
    this.#listening?.stop();
    this.#listening = null;
    this.level = 0;
    this.tooLoud = false;
    if (again || this.isWell) this.state = 'off';
    this.#onNews();
  }

  #become(state: MicrophoneState): void {
    if (state === this.state) return;
    this.state = state;
    this.#onNews();
    if (state === 'refused') this.#onRefused();
  }

  #measure({ at, loudness, floor }: Extract<EarEvent, { readonly kind: 'level' }>): void {
    const level = Math.round(steps * along(loudness)) / steps;
    // The first sound after none at all is taken for the room.
    if (!isTooLoud(floor)) this.#quietAt = at;
    const tooLoud = at - this.#quietAt > loudFor;
    if (level === this.level && tooLoud === this.tooLoud) return;
    this.level = level;
    this.tooLoud = tooLoud;
    this.#onNews();
  }
}
