import { known } from '../lib/assert.ts';
import { rootBit, tonesOf, type ChordWish } from './chord-tones.ts';
import { fingeringOf, type Fingering } from './fingering.ts';
import {
  isOnNeck,
  midiAt,
  pitchClassAt,
  stringNumbers,
  type Fret,
  type Instrument,
  type Place,
  type StringNumber,
} from './fretboard.ts';
import { gripCost, gripsOf, leastFingers, leastStretch, needsPress, silent, type Frets } from './grip.ts';
import { between, fretWires, hands, type Hand } from './hand.ts';
import type { ShapeNote } from './shape.ts';
import { isReentrant } from './string-steps.ts';

export interface VoicingOptions {
  /** This place sounds, as the root. */
  readonly rootPlace?: Place | undefined;
  /** Exactly these strings sound. */
  readonly strings?: readonly StringNumber[] | undefined;
  readonly hand?: Hand | undefined;
  /** How many to give. */
  readonly most?: number | undefined;
}

/** A chord under one hand. */
export interface Voicing {
  /** From the string with the largest number to string 1. */
  readonly notes: readonly ShapeNote[];
  readonly fingering: Fingering;
  /** The fingering's, and what the strings, the bass and the height on the neck add; less is better. */
  readonly cost: number;
}

const usualMost = 12;
/** Frets above the lowest; the widest hand that a tuning asks for, in fifths on a mandolin, covers six. */
const widest = 5;

/** In the millimetres of `Fingering.cost`; set so that the chords that everybody learns come first (common practice). */
const costs = {
  /** A silent string between sounding ones has to be damped. */
  mutedInside: 80,
  /** One at the edge only makes the chord thinner. */
  mutedOutside: 35,
  /** Another tone than the root is lowest. */
  inverted: 80,
  /** A tone is left out by permission. */
  omitted: 30,
  /** For each millimetre from the nut to the lowest fretted place: chords are looked for from the nut on. */
  height: 0.5,
} as const;

/** The strings that are decided already, from the largest number on. */
interface Partly {
  readonly mask: number;
  /** In MIDI notes. */
  readonly lowest: number;
  readonly high: number;
  /** Fretted ones, the fewest presses that hold them, and of both those on the lowest fret. */
  readonly places: number;
  readonly presses: number;
  readonly lowPlaces: number;
  readonly lowPresses: number;
  /** Silent strings since the last that sounds. */
  readonly gap: number;
  readonly cost: number;
}

const nothing: Partly = {
  mask: 0,
  lowest: Infinity,
  high: 0,
  places: 0,
  presses: 0,
  lowPlaces: 0,
  lowPresses: 0,
  gap: 0,
  cost: 0,
};

interface Found {
  readonly frets: Frets;
  readonly cost: number;
}

/**
 * Voicings of a chord that a hand can hold, best first: on each string one note or none, every degree that has to sound
 * (SPEC CHORD), the bass lowest where one is asked. Empty where there is none. The first of
 * `voicingsOf(standardGuitar, { root: parseNoteName('C'), quality: 'major' })` lies on frets 3 2 0 1 0.
 */
export function voicingsOf(
  instrument: Instrument,
  chord: ChordWish,
  { rootPlace, strings, hand = hands.usual, most = usualMost }: VoicingOptions = {},
): readonly Voicing[] {
  const tones = tonesOf(chord);
  if (rootPlace && strings?.includes(rootPlace.string) === false) return [];
  if (rootPlace && !isOnNeck(instrument, rootPlace)) return [];
  if (rootPlace && tones.bitAt(midiAt(instrument, rootPlace)) !== rootBit) return [];
  const wires = fretWires(instrument);
  const open = stringNumbers(instrument).map((string) => midiAt(instrument, { string, fret: 0 as Fret }));
  const inverted = chord.bass || isReentrant(instrument) ? 0 : costs.inverted;
  const frets = open.map(() => silent);
  const found: Found[] = [];
  const [inside, outside] = strings ? [0, 0] : [costs.mutedInside, costs.mutedOutside];
  let limit = Infinity;

  const spots = open.map((own, index) => {
    const string = (index + 1) as StringNumber;
    const isOut = strings?.includes(string) === false;
    return wires.flatMap((_, fret) => {
      const midi = own + fret;
      const bit = isOut || (rootPlace?.string === string && rootPlace.fret !== fret) ? 0 : tones.bitAt(midi);
      return bit === 0 ? [] : [{ fret, bit, midi }];
    });
  });
  const mayBeSilent = open.map((_, index) => {
    const string = (index + 1) as StringNumber;
    return rootPlace?.string !== string && strings?.includes(string) !== true;
  });

  const keep = ({ mask, lowest, cost }: Partly): void => {
    if (!tones.mayStandOn(lowest, pitchesOf(frets, open))) return;
    const whole =
      cost + tones.silentIn(mask) * costs.omitted + (tones.bitAt(lowest) === rootBit ? 0 : inverted);
    const held = gripCost(instrument, frets, hand, limit - whole);
    if (held === undefined) return;
    const at = found.findIndex((one) => one.cost > whole + held);
    found.splice(at < 0 ? found.length : at, 0, { frets: [...frets], cost: whole + held });
    if (found.length > most) found.pop();
    if (found.length === most) limit = found.at(-1)?.cost ?? Infinity;
  };

  /** Everything whose lowest fretted place is at `low`; 0 where nothing is fretted. */
  const searchFrom = (low: number): void => {
    const top = low === 0 ? 0 : Math.min(lastWithin(wires, low, hand.reachMm), low + widest);
    const choices = spots.map((own) => own.filter(({ fret }) => fret === 0 || (fret >= low && fret <= top)));
    // What the strings up to a number can still add: tones, a place on the lowest fret, a low root.
    const tonesAhead = [0];
    const lowAhead = [false];
    const rootAhead = [Infinity];
    for (const [string, own] of choices.entries()) {
      tonesAhead.push(own.reduce((mask, { bit }) => mask | bit, tonesAhead[string] ?? 0));
      lowAhead.push(lowAhead[string] === true || own.some(({ fret }) => fret === low));
      const roots = own.flatMap(({ bit, midi }) => (bit === rootBit ? [midi] : []));
      rootAhead.push(Math.min(rootAhead[string] ?? Infinity, ...roots));
    }

    const lay = (string: number, partly: Partly): void => {
      const reachable = partly.mask | (tonesAhead[string] ?? 0);
      if ((reachable & tones.needed) !== tones.needed) return;
      if (low > 0 && partly.lowPlaces === 0 && lowAhead[string] !== true) return;
      const isInverted =
        partly.lowest < (rootAhead[string] ?? Infinity) &&
        partly.mask !== 0 &&
        tones.bitAt(partly.lowest) !== rootBit;
      const least =
        partly.cost +
        leastFingers(partly.places, partly.presses, partly.lowPlaces - partly.lowPresses) +
        leastStretch(wires, low, partly.high) / hand.share +
        Math.max(tones.silentIn(reachable), tones.silentIn(partly.mask) - string) * costs.omitted +
        (isInverted ? inverted : 0);
      if (least >= limit) return;
      if (string === 0) {
        keep(partly);
        return;
      }
      const index = string - 1;
      for (const { fret, bit, midi } of choices[index] ?? []) {
        const more = fret > 0 && needsPress(frets, string, fret) ? 1 : 0;
        frets[index] = fret;
        lay(index, {
          mask: partly.mask | bit,
          lowest: Math.min(partly.lowest, midi),
          high: Math.max(partly.high, fret),
          places: partly.places + (fret > 0 ? 1 : 0),
          presses: partly.presses + more,
          lowPlaces: partly.lowPlaces + (fret > 0 && fret === low ? 1 : 0),
          lowPresses: partly.lowPresses + (fret === low ? more : 0),
          gap: 0,
          cost: partly.cost + partly.gap * (inside - outside),
        });
        frets[index] = silent;
      }
      if (mayBeSilent[index] === true)
        lay(index, {
          ...partly,
          gap: partly.mask === 0 ? 0 : partly.gap + 1,
          cost: partly.cost + outside,
        });
    };
    const cost = costs.height * (wires[low] ?? 0);
    lay(open.length, { ...nothing, high: low, cost });
  };

  for (let low = 0; low <= instrument.fretCount && costs.height * (wires[low] ?? 0) < limit; low += 1)
    searchFrom(low);
  return found.map(({ frets: own, cost }) => {
    const [grip] = gripsOf(instrument, own, hand);
    const fingering = fingeringOf(instrument, own, known(grip, 'a grip'), hand);
    const notes = fingering.fingers.map(({ place: spot, finger }): ShapeNote => {
      return { place: spot, degree: tones.degreeAt(pitchClassAt(instrument, spot)), finger, optional: false };
    });
    return { notes, fingering, cost };
  });
}

/** The last fret that one hand reaches from this one. */
function lastWithin(wires: readonly number[], low: number, mm: number): number {
  let last = low;
  while (last + 1 < wires.length && between(wires, low, last + 1) <= mm) last += 1;
  return last;
}

function pitchesOf(frets: Frets, open: readonly number[]): readonly number[] {
  return frets.flatMap((fret, index) => (fret === silent ? [] : [(open[index] ?? 0) + fret]));
}
