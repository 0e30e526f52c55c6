import { clockBehind, roundTripOf, type Ping } from '../../connection/pings.ts';
import type { Microphone, Security, WakeLock } from './device.ts';

/** What was found so far; what is missing is still being tried, null did not come through. */
export interface Findings {
  readonly server?: number | null;
  readonly websocket?: readonly Ping[] | null;
  readonly polling?: readonly Ping[] | null;
  readonly security?: Security;
  readonly microphone?: Microphone;
  readonly wakeLock?: WakeLock;
}

/** `limited`: a class can be held all the same. */
export type Outcome = 'trying' | 'works' | 'limited' | 'fails';

export interface Row {
  readonly title: string;
  readonly outcome: Outcome;
  readonly sentence: string;
  /** What to do; '' where there is nothing. */
  readonly help: string;
  /** The page to go on to. */
  readonly next?: { readonly path: string; readonly words: string };
}

export const outcomeWord: Readonly<Record<Outcome, string>> = {
  trying: 'Trying',
  works: 'Works',
  limited: 'Limited',
  fails: 'Does not work',
};

/** From here on a tap feels late, in milliseconds. */
const slow = 300;
/** Clocks that differ by less are called the same, in milliseconds. */
const sameClock = 2000;

/** One row for each thing that a class may need, the needed ones first. */
export function rowsOf(found: Findings): readonly Row[] {
  return [
    row('Server', serverRow(found)),
    row('Lasting connection (WebSocket)', webSocketRow(found)),
    row('Slower way (long-polling)', pollingRow(found)),
    row('Secure address (HTTPS)', found.security && securityRows[found.security]),
    { ...row('Microphone', found.microphone && microphoneRows[found.microphone]), next: soundCheck },
    row('Screen stays on', found.wakeLock && wakeLockRows[found.wakeLock]),
    row('Clock', clockRow(found)),
  ];
}

/** The whole of it in one sentence; '' while something is still being tried. */
export function summaryOf(rows: readonly Row[]): string {
  if (rows.some(({ outcome }) => outcome === 'trying')) return '';
  if (rows.some(({ outcome }) => outcome === 'fails'))
    return 'A class can’t be held from this device yet. What to do stands below.';
  const limited = rows.filter(({ outcome }) => outcome === 'limited').length;
  if (limited === 0) return 'Everything works here.';
  return `A class can be held here. ${limited === 1 ? 'One thing is' : `${String(limited)} things are`} limited.`;
}

type Body = readonly [Exclude<Outcome, 'trying'>, string, string?];

function row(title: string, body: Body | undefined): Row {
  if (!body) return { title, outcome: 'trying', sentence: '', help: '' };
  const [outcome, sentence, help = ''] = body;
  return { title, outcome, sentence, help };
}

function serverRow({ server }: Findings): Body | undefined {
  if (server === undefined) return undefined;
  if (server === null)
    return [
      'fails',
      'The server does not answer.',
      'See that this device is in the right network, then check again. If it stays silent, tell whoever runs the server.',
    ];
  const sentence = `The server answers in ${milliseconds(server)}.`;
  if (server < slow) return ['works', sentence];
  return [
    'limited',
    `${sentence} That is slow, yet nothing gets lost.`,
    'Move closer to the Wi-Fi, or close what else uses it.',
  ];
}

/** Behind a server that is silent nothing can be told of the network. */
const untried: Body = ['limited', 'The server is silent, so this could not be tried.'];

function webSocketRow({ server, websocket, polling }: Findings): Body | undefined {
  if (websocket === undefined) return undefined;
  if (server === null && websocket === null && polling === null) return untried;
  if (websocket) return ['works', `What you ask is on the phones at once: ${trip(websocket)}.`];
  if (polling === undefined) return undefined;
  const help = 'Ask whoever looks after the network to let WebSockets through to this address.';
  return polling
    ? [
        'limited',
        'This network does not let it through. Rootcall takes the slower way by itself.',
        `${help} Pages that are open then take it once they are loaded again.`,
      ]
    : ['fails', 'This network does not let it through.', help];
}

function pollingRow({ server, websocket, polling }: Findings): Body | undefined {
  if (polling === undefined || websocket === undefined) return undefined;
  if (server === null && websocket === null && polling === null) return untried;
  if (polling)
    return [
      'works',
      `${websocket ? 'It stands by in case the lasting connection is cut' : 'It carries the class'}: ${trip(polling)}.`,
    ];
  return websocket
    ? ['limited', 'It does not come through. It is needed only where the lasting connection is cut.']
    : [
        'fails',
        'It does not come through either.',
        'Try another network, or this device’s mobile data where the server can be reached by it.',
      ];
}

const securityRows: Readonly<Record<Security, Body>> = {
  https: ['works', 'The address starts with https://. Nobody in the network can read along.'],
  'this-device': ['works', 'The server runs on this very device, which browsers count as secure.'],
  plain: [
    'limited',
    'The address starts with http://. That is enough for a class; browsers keep the microphone and the lit screen for https://.',
    'Whoever runs the server can start it with npm start -- --https.',
  ],
};

const soundCheck = { path: '/sound', words: 'Sound check: level, room, tuner' };
const microphoneRows: Readonly<Record<Microphone, Body>> = {
  possible: ['works', 'There is one: exercises can be answered by playing here.'],
  insecure: [
    'limited',
    'Browsers give it to https:// addresses only. Taps and names work without it.',
    'For answers by playing, whoever runs the server can start it with npm start -- --https.',
  ],
  absent: [
    'limited',
    'This device shows none. Taps and names work without it.',
    'Plug one in if it is to listen.',
  ],
  denied: [
    'limited',
    'This browser keeps it from this page. Taps and names work without it.',
    'Allow the microphone in the browser’s settings for this page.',
  ],
  unsupported: ['limited', 'This browser has no way to it. Taps and names work without it.'],
};

const darkHelp = 'Set a longer time until the screen goes dark in the settings of this device.';
const wakeLockRows: Readonly<Record<WakeLock, Body>> = {
  possible: ['works', 'The page can keep the screen lit.'],
  insecure: ['limited', 'Browsers let only https:// pages keep the screen lit.', darkHelp],
  refused: [
    'limited',
    'This device does not let the page keep the screen lit at the moment.',
    'Turn off the battery saver, then check again.',
  ],
  unsupported: ['limited', 'This browser can’t keep the screen lit.', darkHelp],
};

function clockRow({ websocket, polling }: Findings): Body | undefined {
  const pings = websocket ?? polling;
  if (pings === undefined) return undefined;
  if (pings === null || pings.length === 0)
    return ['limited', 'Without a connection the clocks can’t be compared.'];
  const behind = clockBehind(pings);
  if (Math.abs(behind) < sameClock) return ['works', 'This device and the server agree on the time.'];
  return [
    'limited',
    `The clock of this device is ${duration(Math.abs(behind))} ${behind > 0 ? 'behind' : 'ahead of'} the server’s. Times shown here may be off; no answer is.`,
    'Let the device set its clock by itself.',
  ];
}

function trip(pings: readonly Ping[]): string {
  return `there and back in ${milliseconds(roundTripOf(pings))}`;
}

function milliseconds(time: number): string {
  return `${String(Math.max(1, Math.round(time)))} ms`;
}

function duration(time: number): string {
  const seconds = Math.round(time / 1000);
  if (seconds < 120) return `${String(seconds)} seconds`;
  const minutes = Math.round(seconds / 60);
  return minutes < 120 ? `${String(minutes)} minutes` : `${String(Math.round(minutes / 60))} hours`;
}
