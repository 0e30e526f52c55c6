import { inputOf } from '../../../dist/shared/exercise/input.js';
import { instrumentOf } from '../../../dist/shared/exercise/roots.js';
import { midiAt, pitchClassAt } from '../../../dist/shared/theory/fretboard.js';
import { pitchClassOf } from '../../../dist/shared/theory/pitch.js';

/** Eighths at 100 beats a minute, in milliseconds. */
const apart = 300;

/** The answer as a microphone would hear it, with the taps that are asked for besides; as it is where it can't be played. */
export function asPlayed(exercise, answer) {
  const { playing, ordered } = inputOf(exercise);
  const { places } = answer;
  if (!playing || places.length === 0) return answer;
  const neck = instrumentOf(exercise);
  const byPitch = [...places].sort((a, b) => midiAt(neck, a) - midiAt(neck, b));
  const tapped = { root: answer.root ?? rootAmong(exercise, neck, places), lowest: byPitch[0] };
  const heard =
    playing.as === 'chord'
      ? { kind: 'chord', tones: tonesOf(neck, places) }
      : { kind: 'line', pitches: pitchesOf(neck, ordered ? places : byPitch) };
  return { places: playing.taps.map((tap) => tapped[tap]), heard, way: 'play' };
}

function tonesOf(neck, places) {
  const sounding = new Set(places.map((place) => pitchClassAt(neck, place)));
  return [...sounding].map((pitchClass) => ({ pitchClass, confidence: 0.94 }));
}

function pitchesOf(neck, places) {
  return places.map((place, index) => ({ pitch: midiAt(neck, place), at: index * apart, confidence: 0.97 }));
}

/** What the student takes for the root: its tone on its own string, else whatever lies there. */
function rootAmong({ root, rootString }, neck, places) {
  const onString = places.filter(({ string }) => string === rootString);
  const among = onString.length > 0 ? onString : places;
  return among.find((place) => pitchClassAt(neck, place) === pitchClassOf(root)) ?? among[0];
}
