import { describe, expect, test } from 'vitest';
import { known } from '../../../shared/lib/assert.ts';
import { degreeSign, formatName, parseName, type NoteNaming } from '../../../shared/theory/naming.ts';
import {
  formatNoteName,
  formatPitch,
  frequencyOf,
  letters,
  midiOf,
  parseNoteName,
  parsePitch,
  pitchClassOf,
  pitchNamed,
  type Alteration,
  type MidiNote,
} from '../../../shared/theory/pitch.ts';

const pitch = (text: string) => known(parsePitch(text), text);
const note = (text: string) => known(parseNoteName(text), text);
const alterations: readonly Alteration[] = [-2, -1, 0, 1, 2];

describe('PITCH-1: letter, alteration, octave', () => {
  // Source: MIDI 1.0 (60 is C4) and ISO 16:1975 (A4 is 440 Hz).
  test.each([
    ['C4', 60],
    ['A4', 69],
    ['Cb4', 59],
    ['B#3', 60],
    ['E2', 40],
  ])('%s is MIDI %i', (text, midi) => {
    expect(midiOf(pitch(text))).toBe(midi);
    expect(formatPitch(pitch(text))).toBe(text);
  });

  test('a name and a note make the pitch', () => {
    for (const letter of letters)
      for (const alteration of alterations)
        for (const octave of [-1, 4, 8]) {
          const spelled = { letter, alteration, octave };
          expect(pitchNamed(spelled, midiOf(spelled))).toEqual(spelled);
        }
  });

  test('A4 is 440 Hz, an octave up doubles it', () => {
    expect(frequencyOf(69 as MidiNote)).toBe(440);
    expect(frequencyOf(81 as MidiNote)).toBe(880);
  });

  test.each(['', 'H', 'c', 'Ebbb', 'E♭', 'Es', '#C', 'C#b'])('%j is no note in the stored form', (text) => {
    expect(parseNoteName(text)).toBeUndefined();
    expect(parsePitch(`${text}4`)).toBeUndefined();
  });
});

describe('PITCH-3: names in the reader’s own system', () => {
  // Source: LilyPond 2.24, scm/define-note-names.scm (deutsch, italiano) for the names; ♭ and ♯ as signs are ours.
  test.each([
    ['B', 'B', 'H', 'si'],
    ['Bb', 'B♭', 'B', 'si♭'],
    ['Eb', 'E♭', 'Es', 'mi♭'],
    ['Ab', 'A♭', 'As', 'la♭'],
    ['F#', 'F♯', 'Fis', 'fa♯'],
    ['G', 'G', 'G', 'sol'],
    ['Cb', 'C♭', 'Ces', 'do♭'],
    ['B#', 'B♯', 'His', 'si♯'],
    ['Ebb', 'E𝄫', 'Eses', 'mi𝄫'],
    ['Abb', 'A𝄫', 'Ases', 'la𝄫'],
    ['Bbb', 'B𝄫', 'Heses', 'si𝄫'],
    ['F##', 'F𝄪', 'Fisis', 'fa𝄪'],
  ])('%s is %s, %s, %s', (stored, english, german, solfege) => {
    expect(formatName(note(stored), 'english')).toBe(english);
    expect(formatName(note(stored), 'german')).toBe(german);
    expect(formatName(note(stored), 'solfege')).toBe(solfege);
  });

  test.each<NoteNaming>(['english', 'german', 'solfege'])('every note reads back in %s', (naming) => {
    const written = letters.flatMap((letter) =>
      alterations.map((alteration) => {
        const name = { letter, alteration };
        const text = formatName(name, naming);
        expect(parseName(text, naming)).toEqual(name);
        expect(parseName(` ${text.toLowerCase()} `, naming)).toEqual(name);
        expect(parseNoteName(formatNoteName(name))).toEqual(name);
        return text;
      }),
    );
    expect(new Set(written).size).toBe(35);
  });

  // Source: names as above; the signs as ASCII are common practice.
  test.each<[NoteNaming, string, string | undefined]>([
    ['english', 'Eb', 'Eb'],
    ['english', 'F#', 'F#'],
    ['english', 'bb', 'Bb'],
    ['english', 'Bbb', 'Bbb'],
    ['english', 'F##', 'F##'],
    ['english', 'Fis', undefined],
    ['english', 'mi', undefined],
    ['solfege', 'fa#', 'F#'],
    ['solfege', 'mib', 'Eb'],
    ['solfege', 'SIB', 'Bb'],
    ['solfege', 'sol##', 'G##'],
    ['solfege', 'E', undefined],
    ['german', 'Es', 'Eb'],
    ['german', 'Eb', undefined],
    ['german', 'F#', undefined],
    ['german', 'Bb', undefined],
  ])('in %s %s is read as %s', (naming, text, stored) => {
    const read = parseName(text, naming);
    expect(read && formatNoteName(read)).toBe(stored);
  });

  test('all twelve pitch classes, by their sharp and by their flat, in every system', () => {
    const sharps = 'C C# D D# E F F# G G# A A# B'.split(' ').map(note);
    const flats = 'C Db D Eb E F Gb G Ab A Bb B'.split(' ').map(note);
    for (const naming of ['english', 'german', 'solfege'] as const)
      for (let semitones = 0; semitones < 12; semitones += 1)
        for (const name of [known(sharps[semitones], 'sharp'), known(flats[semitones], 'flat')]) {
          expect(pitchClassOf(name)).toBe(semitones);
          expect(parseName(formatName(name, naming), naming)).toEqual(name);
        }
  });

  test('a bare B is another note in German', () => {
    expect(parseName('B', 'english')).toEqual(note('B'));
    expect(parseName('B', 'german')).toEqual(note('Bb'));
    expect(parseName('H', 'english')).toBeUndefined();
    expect(parseName('B♭', 'german')).toBeUndefined();
  });
});

test('PITCH-4: a degree on a chart', () => {
  expect(['1', 'b3', '5', '#5', 'bb7'].map(degreeSign)).toEqual(['R', '♭3', '5', '♯5', '♭♭7']);
});
