import type { Level } from './level.ts';
import type { Net } from './net.ts';
import type { Peak } from './onset.ts';
import type { Ring } from './ring.ts';

/** What the parts of the ear have in common: the sound, how loud the room is, and what it is heard with. */
export interface Sounding {
  readonly ring: Ring;
  readonly level: Level;
  readonly sampleRate: number;
  readonly net: Net | null;
}

/** Where something was struck, as an index into the sound. */
export interface Onset extends Peak {
  readonly at: number;
  /** How loud it was just before, and just after, in decibels of full scale. */
  readonly before: number;
  readonly after: number;
}
