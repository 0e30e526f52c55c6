import { build, find, name, scale } from './exercises.ts';
import type { Random } from './random.ts';

/** What nobody should send, made from what may be sent. */
export interface NonsenseRequest {
  readonly method: string;
  readonly path: string;
  readonly type: string | null;
  readonly body: string | null;
}

type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json };

const odd: readonly Json[] = [
  null,
  true,
  0,
  -1,
  1.5,
  1e308,
  -1e308,
  2 ** 53,
  '',
  ' ',
  '0',
  'constructor',
  '__proto__',
  'toString',
  '\u0000\u202e\ud800',
  '𝄞'.repeat(60),
  'x'.repeat(5000),
  "'; drop table answers; --",
  '<script>alert(1)</script>',
  '=1+1',
  [],
  {},
  [[[[[[[[[[]]]]]]]]]],
  { kind: 'place' },
  { length: 1e9 },
  { toJSON: 'x' },
];

const plain = (value: unknown) => JSON.parse(JSON.stringify(value)) as Json;
const exercises = [
  find('D'),
  build('E', 'minor'),
  name('E', 5),
  scale('E', 'minor-pentatonic', 1, 5),
  find('D', { instrument: 'custom:E4,B3,G3' }),
].map(plain);

/** Any number of malformed commands, frames and requests; the same seed makes the same ones. */
export class Nonsense {
  readonly #random: Random;
  readonly #roundId: () => string;

  constructor(random: Random, roundId: () => string) {
    this.#random = random;
    this.#roundId = roundId;
  }

  /** For a Stand or a Desk: mostly malformed, now and then only unusual. */
  command(): unknown {
    const random = this.#random;
    const place = { string: 1 + random.below(7), fret: random.below(30) };
    const bases: readonly Json[] = [
      { kind: 'place', roundId: this.#roundId(), sendId: this.#word(), places: [place, place], done: true },
      {
        kind: 'place',
        roundId: this.#word(),
        sendId: this.#word(),
        places: [place],
        root: place,
        finger: 1,
        level: 2 + random.below(3),
        done: false,
      },
      {
        kind: 'place',
        roundId: this.#roundId(),
        sendId: this.#word(),
        places: [place],
        heard: this.#heard(),
        way: random.pick(['play', 'midi']),
        done: true,
      },
      { kind: 'give-turn', studentId: this.#word() },
      { kind: 'set-alias', alias: 'Quiet fret' },
      { kind: 'ask', exercise: random.pick(exercises), seconds: 30 },
      { kind: 'ask', exercise: random.pick(exercises), harder: this.#harder(), seconds: null },
      { kind: 'show-charts', charts: [random.pick(exercises), random.pick(exercises)] },
      { kind: 'show-step', at: random.below(3) },
      { kind: 'show-taps', places: [place] },
      { kind: 'set-class', settings: { autoAdmit: true, score: 'teams', ranking: true, playing: 'turns' } },
      { kind: 'select', index: 1 },
      {
        kind: random.pick([
          'hold',
          'reveal',
          'next',
          'void',
          'undo',
          'admit-new',
          'ask-again',
          'ask-planned',
        ]),
      },
      { kind: 'enter', studentId: this.#word(), places: [place], level: 2 },
    ];
    return this.#bend(random.pick(bases), 3);
  }

  /** What a socket carries, broken below the level of events. */
  frame(): string | Buffer {
    const random = this.#random;
    const event = `42${JSON.stringify(['stand:command', this.command()])}`;
    switch (random.below(9)) {
      case 0:
        return Buffer.from(Array.from({ length: 1 + random.below(200) }, () => random.below(256)));
      case 1:
        return event.slice(0, random.below(event.length));
      case 2:
        return `${String(random.below(10))}${event}`;
      case 3:
        return `451-${JSON.stringify(['stand:command', { _placeholder: true, num: random.below(5) }])}`;
      case 4:
        return `42${String(random.below(1e9))}${'['.repeat(2000)}`;
      case 5:
        return 'x'.repeat(20_000);
      case 6:
        return `42/${this.#word()},["${this.#word()}"]`;
      case 7:
        return `42${JSON.stringify([random.pick(['hello', 'connect', 'disconnect', '__proto__', 'newListener']), {}])}`;
      default:
        return event;
    }
  }

  handshake(): object {
    const token = this.#word();
    return this.#bend(
      { role: this.#random.pick(['stand', 'desk', 'board']), token, code: token, classId: token },
      2,
    ) as object;
  }

  request(groupId: string): NonsenseRequest {
    const random = this.#random;
    const id = random.chance(0.6)
      ? groupId
      : random.pick(['..', '%2e%2e%2f', '%00', '%ff', 'x'.repeat(300), this.#word()]);
    const paths: readonly (readonly [string, Json])[] = [
      ['join', { code: 'BCDFGH', name: 'Kaya' }],
      ['set-up', { token: this.#word(), name: 'Mara', passphrase: 'seven short steps' }],
      ['session', { name: 'Mara', passphrase: this.#word() }],
      [
        'groups',
        {
          name: 'Thursday Strings',
          school: '',
          instrument: 'guitar',
          naming: 'english',
          language: 'en',
          purgeAt: 1,
        },
      ],
      [`groups/${id}`, { name: 'Thursday Strings', purgeAt: null }],
      [`groups/${id}/students`, { names: ['Kaya', 'Bram'] }],
      [
        `groups/${id}/plans`,
        {
          title: 'Roots',
          exercises: [{ exercise: random.pick(exercises), harder: this.#harder(), seconds: null }],
        },
      ],
      [`groups/${id}/classes`, { planId: null }],
      [`students/${id}`, { name: 'Edda', seatNumber: 3 }],
      [`plans/${id}`, { title: 'Roots', exercises: [], revision: 1 }],
      ['address', { address: 'http://rootcall.test' }],
      [this.#word(), {}],
    ];
    const [path, valid] = random.pick(paths);
    const text = JSON.stringify(this.#bend(valid, 2));
    const method = random.pick(['POST', 'POST', 'POST', 'PUT', 'PATCH', 'GET', 'DELETE', 'OPTIONS', 'TRACK']);
    return {
      method: path === `groups/${groupId}` && method === 'DELETE' ? 'GET' : method,
      path: `/${random.pick(['api/', 'api/', 'api/', 'api//', ''])}${path}`,
      type: random.pick([
        'application/json',
        'application/json',
        'text/plain',
        'application/json; charset=x',
        null,
      ]),
      body: method === 'GET' ? null : random.chance(0.2) ? text.slice(0, random.below(text.length)) : text,
    };
  }

  /** A line or a chord, now and then of notes that there are not. */
  #heard(): Json {
    const random = this.#random;
    const notes = Array.from({ length: 1 + random.below(5) }, (_, index) => index);
    return random.chance(0.5)
      ? { kind: 'chord', tones: notes.map(() => ({ pitchClass: random.below(13), confidence: 0.5 })) }
      : { kind: 'line', pitches: notes.map((at) => ({ pitch: random.below(130), at, confidence: 1 })) };
  }

  /** The levels beside the first: at times more than there may be. */
  #harder(): readonly Json[] {
    return Array.from({ length: this.#random.below(4) }, () => this.#random.pick(exercises));
  }

  #bend(value: Json, times: number): Json {
    let bent = value;
    for (let time = this.#random.below(times + 1); time > 0; time -= 1) bent = this.#bendOnce(bent);
    return bent;
  }

  #bendOnce(value: Json): Json {
    const random = this.#random;
    if (value === null || typeof value !== 'object' || random.chance(0.1)) return random.pick(odd);
    if (Array.isArray(value)) {
      const all = value as readonly Json[];
      if (random.chance(0.3)) return Array.from({ length: random.below(200) }, () => all[0] ?? null);
      const at = random.below(all.length);
      return all.map((one, index) => (index === at ? this.#bendOnce(one) : one));
    }
    const fields = Object.entries(value);
    const at = random.below(fields.length);
    switch (random.below(4)) {
      case 0:
        return Object.fromEntries(fields.filter((_, index) => index !== at));
      case 1:
        return Object.fromEntries([
          ...fields,
          [random.pick(['__proto__', 'constructor', 'kind', 'x']), random.pick(odd)],
        ]);
      default:
        return Object.fromEntries(
          fields.map(([key, field], index) => [key, index === at ? this.#bendOnce(field) : field]),
        );
    }
  }

  #word(): string {
    return Array.from({ length: 1 + this.#random.below(24) }, () =>
      this.#random.pick([...'abcXYZ019-_']),
    ).join('');
  }
}
