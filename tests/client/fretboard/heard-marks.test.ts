import { describe, expect, it } from 'vitest';
import { heardMarks, placesSounding } from '../../../client/fretboard/heard-marks.ts';
import { heardOnNeck } from '../../../client/pages/stand/heard-on-neck.ts';
import type { Heard } from '../../../shared/exercise/heard.ts';
import {
  instrumentById,
  midiAt,
  pitchClassAt,
  place,
  standardGuitar,
  type Place,
} from '../../../shared/theory/fretboard.ts';
import type { MidiNote, PitchClass } from '../../../shared/theory/pitch.ts';

const line = (...midi: readonly number[]): Heard => ({
  kind: 'line',
  pitches: midi.map((pitch, at) => ({ pitch: pitch as MidiNote, at, confidence: 1 })),
});
const tones = (...classes: readonly number[]) =>
  classes.map((pitchClass) => ({ pitchClass: pitchClass as PitchClass, confidence: 1 }));
const spots = (places: readonly Place[]) =>
  places.map(({ string, fret }) => `${String(string)}/${String(fret)}`);

describe('what is heard, on the neck', () => {
  it('is every place that sounds just this pitch', () => {
    // E4 on a guitar's strings 1 to 6 (MIDI 64 59 55 50 45 40): frets 0 5 9 14 19, and 24 beyond 22 frets.
    expect(spots(placesSounding(standardGuitar, 64 as MidiNote))).toEqual([
      '1/0',
      '2/5',
      '3/9',
      '4/14',
      '5/19',
    ]);
  });

  it('is of a line all its pitches, the last one strongest', () => {
    const marks = heardMarks(standardGuitar, line(62, 64), [], []);
    for (const { place: at, look } of marks)
      expect(look).toBe(midiAt(standardGuitar, at) === 64 ? 'newest' : 'heard');
    expect(new Set(marks.map(({ place: at }) => midiAt(standardGuitar, at)))).toEqual(new Set([62, 64]));
  });

  it('is of a chord every place of its tones, in any octave', () => {
    const marks = heardMarks(standardGuitar, { kind: 'chord', tones: tones(9, 1, 4) }, [], []);
    const inChord = marks.every(({ place: at }) => [9, 1, 4].includes(pitchClassAt(standardGuitar, at)));
    expect(inChord).toBe(true);
    // None stands out: a chord is heard whole.
    expect(new Set(marks.map(({ look }) => look))).toEqual(new Set(['heard']));
    expect(spots(marks.map((mark) => mark.place))).toEqual(
      expect.arrayContaining(['5/0', '6/5', '3/2', '2/2']),
    );
  });

  it('is a hint alone while there is one', () => {
    const marks = heardMarks(standardGuitar, { kind: 'chord', tones: tones(0) }, tones(9), []);
    expect(new Set(marks.map(({ look }) => look))).toEqual(new Set(['hint']));
    expect(marks.every(({ place: at }) => pitchClassAt(standardGuitar, at) === 9)).toBe(true);
  });

  it('counts frets from a capo, as the notes that sound', () => {
    const capo = instrumentById('guitar+capo=2') ?? standardGuitar;
    expect(spots(placesSounding(capo, 66 as MidiNote))).toContain('1/0');
  });

  it('is nothing before anything was heard', () => {
    expect(heardMarks(standardGuitar, undefined, [], [place(1, 0)])).toEqual([]);
  });

  it('rings the places to choose from where a line began on the root and its string is asked', () => {
    const ringed = (title: string, taps: readonly 'root'[], places: readonly Place[] = []) =>
      heardOnNeck(standardGuitar, { places, heard: line(62, 64) }, [], { as: 'line', taps }, title)
        .filter(({ look }) => look === 'candidate')
        .map((mark) => mark.place);
    expect(spots(ringed('D major scale', ['root']))).toEqual(
      spots(placesSounding(standardGuitar, 62 as MidiNote)),
    );
    expect(ringed('G major scale', ['root'])).toEqual([]);
    expect(ringed('D major scale', [])).toEqual([]);
    expect(ringed('D major scale', ['root'], [place(2, 3)])).toEqual([]);
  });
});
