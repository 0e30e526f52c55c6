import { describe, expect, test } from 'vitest';
import { chartWidth, revealChart, tapsWindow } from '../../../client/pages/board/chart-notes.ts';
import type { Exercise } from '../../../shared/exercise/exercise.ts';
import { explainForClass } from '../../../shared/exercise/explain.ts';
import { judge } from '../../../shared/exercise/judge.ts';
import { answerKey } from '../../../shared/exercise/key.ts';
import { known } from '../../../shared/lib/assert.ts';
import {
  instrumentById,
  place,
  standardGuitar,
  type StringNumber,
} from '../../../shared/theory/fretboard.ts';
import { pitchClass } from '../../../shared/theory/pitch.ts';
import { build } from '../../support/exercises.ts';

describe('a chart on the Board', () => {
  // E♭4 is string 3, fret 8: G3 is 55, E♭4 is 63 (MIDI 1.0).
  const name: Exercise = {
    kind: 'name',
    instrument: 'guitar',
    root: { letter: 'E', alteration: -1 },
    rootString: 3 as StringNumber,
    strictness: 'string',
    range: null,
    place: place(3, 8),
    wanted: 'note',
  };

  test.each([
    ['english', 'E♭'],
    ['german', 'Es'],
    ['solfege', 'mi♭'],
  ] as const)('says, after the reveal, the right name of the place that was asked (%s)', (naming, label) => {
    const { notes, corrections } = revealChart({ exercise: name, notes: [] }, null, naming);
    expect(notes).toEqual([{ place: place(3, 8), look: 'filled', label, root: false }]);
    expect(corrections).toEqual([]);
  });

  test('keeps the gap of many strings, and leaves the words beside it room', () => {
    const ten = known(instrumentById('custom:E5-B4-G4-D4-A3-E3-B2-F#2-C2-G1'), 'ten strings');
    const eight = known(instrumentById('guitar-8'), 'eight strings');
    expect(chartWidth(standardGuitar, 98, 680)).toBe('680');
    expect(Number(chartWidth(eight, 98, 680)) / (8 + 0.86)).toBeGreaterThanOrEqual(97.5);
    expect(Number(chartWidth(ten, 98, 680))).toBeLessThanOrEqual(960);
  });

  test('shows no frets that a short neck has not', () => {
    const short = known(instrumentById('custom:D4-A3-D3+frets=5'), 'five frets');
    expect(tapsWindow(short, [])).toEqual({ low: 1, high: 5 });
  });

  test('TURN-6: of a slip that was only heard shows the key, and the words say the slip', () => {
    // E minor round the root on string 2, fret 5 (common practice, no source); G sharp is pitch class 8.
    const exercise = build('E', 'minor');
    const tone = (semitones: number) => ({ pitchClass: pitchClass(semitones), confidence: 0.9 });
    const tones = [tone(4), tone(8), tone(11)];
    const verdict = judge(exercise, { places: [place(2, 5)], heard: { kind: 'chord', tones }, way: 'play' });
    const example = verdict.kind === 'slip' ? verdict : null;
    const notes = answerKey(exercise);
    const key = revealChart({ exercise, notes }, null, 'english');
    expect(revealChart({ exercise, notes }, example, 'english')).toEqual(key);
    expect(known(example, 'slip').cause).toBe('major-for-minor');
    expect(explainForClass(exercise, known(example, 'slip'), 'english')).toMatch(/third/);
  });
});
