import { known } from '../lib/assert.ts';
import { failure, success, type Result } from '../lib/result.ts';
import { isOnNeck, type Fret, type Instrument, type Place, type StringNumber } from './fretboard.ts';
import { fingerCount, gripsOf, layings, silent, stringUnder, type Frets, type Grip } from './grip.ts';
import { between, fretWires, handOf, hands, pairReach, type Ease, type Finger, type Hand } from './hand.ts';

/** A place that sounds and its finger; 0 is none, for an open string. */
export interface FingeredPlace {
  readonly place: Place;
  readonly finger: 0 | Finger;
}

/** One finger laid over several strings, from the string with the larger number to the other: `strings: [6, 1]`. */
export interface Barre {
  readonly finger: Finger;
  readonly fret: Fret;
  readonly strings: readonly [StringNumber, StringNumber];
}

/** Which finger holds what. */
export interface Fingering {
  /** From the string with the largest number to string 1. */
  readonly fingers: readonly FingeredPlace[];
  readonly barre: readonly Barre[];
  /** In millimetres of a usual hand's stretch; less is easier. */
  readonly cost: number;
  readonly ease: Ease;
}

/** What a chart says of one string: `fret: null` where it is silent. A note of a shape is one too. */
export interface GivenFinger {
  readonly place: { readonly string: number; readonly fret: number | null };
  readonly finger: number;
}

/**
 * Every sensible fingering of places that sound together, one a string, best first. Where no hand can, a sentence for
 * the teacher says why: `fingeringsOf(standardGuitar, [place(5, 3), place(1, 9)])` fails with "Frets 3 and 9 are 160 mm
 * apart; a hand reaches 130 mm."
 */
export function fingeringsOf(
  instrument: Instrument,
  places: readonly Place[],
  hand: Hand = hands.usual,
): Result<readonly Fingering[], string> {
  const problem = placesProblem(instrument, places);
  if (problem !== undefined) return failure(problem);
  const frets = fretsOf(instrument, places);
  const grips = gripsOf(instrument, frets, hand);
  if (grips.length === 0) return failure(whyNone(instrument, frets, hand));
  return success(grips.map((grip) => fingeringOf(instrument, frets, grip, hand)));
}

/**
 * What speaks against a fingering as it is given, in one sentence for the teacher; undefined where nothing does.
 * Strings that a chart mutes may be given too. `fingeringProblem(standardGuitar, [{ place: place(2, 1), finger: 0 }])`
 * is "String 2, fret 1, has no finger."
 */
export function fingeringProblem(
  instrument: Instrument,
  given: readonly GivenFinger[],
  hand: Hand = hands.usual,
): string | undefined {
  const sounding = given.flatMap(({ place: { string, fret } }) =>
    fret === null ? [] : [{ string, fret } as Place],
  );
  const frets = fretsOf(instrument, sounding);
  return (
    placesProblem(instrument, sounding) ??
    fingerProblem(given) ??
    barreProblem(frets, given) ??
    orderProblem(given) ??
    reachProblem(instrument, frets, hand) ??
    pairProblem(instrument, given, hand)
  );
}

/** The fingering of a grip that is known to hold these frets. */
export function fingeringOf(
  instrument: Instrument,
  frets: Frets,
  { presses, cost }: Grip,
  hand: Hand,
): Fingering {
  const fingers: FingeredPlace[] = [];
  for (let string = frets.length; string >= 1; string -= 1) {
    const fret = frets[string - 1] ?? silent;
    if (fret === silent) continue;
    const press = presses.find((one) => one.fret === fret && one.low >= string && one.high <= string);
    fingers.push({
      place: { string: string as StringNumber, fret: fret as Fret },
      finger: press?.finger ?? 0,
    });
  }
  const barre = presses
    .filter(({ count }) => count > 1)
    .map(({ finger, fret, low, high }): Barre => {
      return { finger, fret: fret as Fret, strings: [low as StringNumber, high as StringNumber] };
    });
  return { fingers, barre, cost, ease: easeOf(instrument, presses, hand) };
}

function easeOf(instrument: Instrument, presses: Grip['presses'], hand: Hand): Ease {
  const used = presses.map(({ fret }) => fret);
  const [low, high] = [Math.min(...used), Math.max(...used)];
  const mm = used.length === 0 ? 0 : between(fretWires(instrument), low, high);
  const within = ({ frets, mm: most }: Hand['easy']) =>
    used.length === 0 || (high - low <= frets && mm <= most);
  const isSpread = presses.some((a) =>
    presses.some((b) => a.finger < b.finger && b.fret - a.fret > pairReach(hand, a.finger, b.finger).frets),
  );
  if (isSpread || !within(hand.normal)) return 'stretch';
  return within(hand.easy) ? 'easy' : 'normal';
}

function fretsOf(instrument: Instrument, places: readonly Place[]): Frets {
  const frets = instrument.openStrings.map(() => silent);
  for (const { string, fret } of places) frets[string - 1] = fret;
  return frets;
}

function placesProblem(instrument: Instrument, places: readonly Place[]): string | undefined {
  const off = places.find((spot) => !isOnNeck(instrument, spot));
  if (off) return `There is no fret ${String(off.fret)} on string ${String(off.string)}.`;
  const twice = places.find((spot, at) => places.findIndex(({ string }) => string === spot.string) !== at);
  return twice && `String ${String(twice.string)} has two places.`;
}

function fingerProblem(given: readonly GivenFinger[]): string | undefined {
  for (const { place, finger } of given) {
    const string = `String ${String(place.string)}`;
    if (!Number.isInteger(finger) || finger < 0 || finger > fingerCount)
      return `${string} has finger ${String(finger)}; a hand has fingers 1 to 4.`;
    if (place.fret === null && finger !== 0) return `${string} is muted and needs no finger.`;
    if (place.fret === 0 && finger !== 0) return `${string} is open and needs no finger.`;
    if (place.fret && finger === 0) return `${string}, fret ${String(place.fret)}, has no finger.`;
  }
  return undefined;
}

function barreProblem(frets: Frets, given: readonly GivenFinger[]): string | undefined {
  for (const finger of [1, 2, 3, 4]) {
    const held = given.flatMap(({ place, finger: own }) => (own === finger ? [place] : []));
    const used = [...new Set(held.map(({ fret }) => fret ?? 0))].sort((a, b) => a - b);
    if (used.length > 1) return `Finger ${String(finger)} can’t be at frets ${used.join(' and ')} at once.`;
    const strings = held.map(({ string }) => string);
    const under = stringUnder(frets, used[0] ?? 0, Math.max(...strings), Math.min(...strings));
    if (under !== undefined) return underText(frets, under, used[0]);
  }
  return undefined;
}

function underText(frets: Frets, string: number, barre = 0): string {
  const fret = frets[string - 1] ?? 0;
  return fret === 0
    ? `String ${String(string)} is open under the barre.`
    : `String ${String(string)}, fret ${String(fret)}, lies under the barre at fret ${String(barre)}.`;
}

/** Each pair of places under two fingers, the one with the smaller number first. */
function pairsOf(given: readonly GivenFinger[]) {
  const fretted = given.flatMap(({ place: { string, fret }, finger }) =>
    fret === null || finger === 0 ? [] : [{ string, fret, finger: finger as Finger }],
  );
  return fretted.flatMap((a) => fretted.filter((b) => a.finger < b.finger).map((b) => [a, b] as const));
}

function orderProblem(given: readonly GivenFinger[]): string | undefined {
  for (const [a, b] of pairsOf(given)) {
    const crossed = `Fingers ${String(a.finger)} and ${String(b.finger)} cross`;
    if (a.fret > b.fret)
      return `${crossed}: finger ${String(a.finger)} is at fret ${String(a.fret)}, finger ${String(b.finger)} at fret ${String(b.fret)}.`;
    if (a.fret === b.fret && a.finger !== 1 && a.string < b.string)
      return `${crossed} at fret ${String(a.fret)}.`;
  }
  return undefined;
}

function reachProblem(instrument: Instrument, frets: Frets, hand: Hand): string | undefined {
  const used = frets.filter((fret) => fret > 0);
  if (used.length === 0) return undefined;
  const [low, high] = [Math.min(...used), Math.max(...used)];
  const apart = between(fretWires(instrument), low, high);
  if (apart <= hand.reachMm) return undefined;
  return `Frets ${String(low)} and ${String(high)} are ${mmText(apart)} apart; ${handText(hand)} reaches ${mmText(hand.reachMm)}.`;
}

function pairProblem(instrument: Instrument, given: readonly GivenFinger[], hand: Hand): string | undefined {
  for (const [a, b] of pairsOf(given)) {
    const apart = between(fretWires(instrument), a.fret, b.fret);
    const { mm } = pairReach(hand, a.finger, b.finger);
    if (apart > mm)
      return `Fingers ${String(a.finger)} and ${String(b.finger)} are ${mmText(apart)} apart; ${handText(hand)} reaches ${mmText(mm)} with them.`;
  }
  return undefined;
}

const mmText = (mm: number) => `${mm.toFixed(0)} mm`;
const handText = ({ size }: Hand) => (size === 'usual' ? 'a hand' : `a ${size} hand`);
/** Tells what only the hand's size forbids. */
const boundless: Hand = handOf('large', Infinity);
const countWords = 'no one two three four five six seven eight nine ten'.split(' ');

/** Why there is no grip: the hand too short, too few fingers, or something in the way of a barre. */
function whyNone(instrument: Instrument, frets: Frets, hand: Hand): string {
  const tooFar = reachProblem(instrument, frets, hand);
  if (tooFar !== undefined) return tooFar;
  const [easiest] = gripsOf(instrument, frets, boundless);
  if (easiest) {
    const { fingers } = fingeringOf(instrument, frets, easiest, hand);
    return known(pairProblem(instrument, fingers, hand), 'two fingers too far apart');
  }
  const lays = layings(frets, fingerCount, () => undefined).flat();
  for (const { fret, low, high } of lays) {
    const under = stringUnder(frets, fret, low, high);
    if (under !== undefined) return underText(frets, under, fret);
  }
  const fewest = Math.min(...layings(frets, frets.length).map((all) => all.length));
  return `That takes ${countWords[fewest] ?? String(fewest)} fingers.`;
}
