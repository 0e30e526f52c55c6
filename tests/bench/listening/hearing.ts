import { readFileSync } from 'node:fs';
import { Ear } from '../../../client/listening/ear.ts';
import type { EarEvent, ListenFor } from '../../../client/listening/events.ts';
import { loadNet, type Net } from '../../../client/listening/net.ts';
import type { MidiNote } from '../../../shared/theory/pitch.ts';
import { sampleRate } from '../../support/sound/samples.ts';

export const weightsFile = new URL('../../../client/listening/weights.bin', import.meta.url);

let net: Net | undefined;

/** The net with the weights as they stand in the repository. */
export function theNet(): Net {
  const { buffer, byteOffset, byteLength } = readFileSync(weightsFile);
  net ??= loadNet(buffer.slice(byteOffset, byteOffset + byteLength) as ArrayBuffer);
  return net;
}

/** Everything an ear for a guitar says about that sound. */
export function hear(samples: Float32Array, mode: ListenFor, chunk = 1024): readonly EarEvent[] {
  const ear = new Ear({ sampleRate, lowest: 40 as MidiNote, net: theNet() });
  ear.listenFor(mode);
  const events: EarEvent[] = [];
  for (let at = 0; at < samples.length; at += chunk)
    events.push(...ear.feed(samples.subarray(at, at + chunk)));
  return events;
}

export type NoteEvent = EarEvent & { readonly kind: 'note' };
export type ChordEvent = EarEvent & { readonly kind: 'chord' };

export const notesOf = (events: readonly EarEvent[]): readonly NoteEvent[] =>
  events.filter((event) => event.kind === 'note');

export const chordsOf = (events: readonly EarEvent[]): readonly ChordEvent[] =>
  events.filter((event) => event.kind === 'chord');
