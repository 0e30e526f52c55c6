import { describe, expect, it } from 'vitest';
import { keyInWords } from '../../../client/pages/stand/key-in-words.ts';
import {
  heardSaid,
  hintLine,
  microphoneWords,
  midiWords,
  panelWords,
  tapAsked,
  whyListen,
  type Panel,
} from '../../../client/pages/stand/play-words.ts';
import type { MicrophoneState } from '../../../client/listening/events.ts';
import type { MidiState } from '../../../client/midi/midi-events.ts';
import { noAnswer, type Answer } from '../../../shared/exercise/answer.ts';
import type { Heard } from '../../../shared/exercise/heard.ts';
import { type MidiNote, type PitchClass } from '../../../shared/theory/pitch.ts';
import { wordCount } from '../../../shared/exercise/phrases.ts';
import { wordingOf } from '../../../shared/exercise/wording.ts';
import { formatName } from '../../../shared/theory/naming.ts';
import { build, find, scale } from '../../support/exercises.ts';

const names = (title: string, naming: 'english' | 'german' | 'solfege' = 'english') => ({
  key: keyInWords(title),
  naming,
});
const chordOf = (...classes: readonly number[]): Heard => ({
  kind: 'chord',
  tones: classes.map((pitchClass) => ({ pitchClass: pitchClass as PitchClass, confidence: 1 })),
});
const lineOf = (...midi: readonly number[]): Heard => ({
  kind: 'line',
  pitches: midi.map((pitch, at) => ({ pitch: pitch as MidiNote, at: 500 * at, confidence: 1 })),
});

describe('the key that a task speaks of', () => {
  it('is read from the English title of every kind', () => {
    const rootOf = (title: string) => formatName(keyInWords(title).root, 'english');
    expect(rootOf(wordingOf(find('Eb'), 'english').title)).toBe('E♭');
    expect(rootOf(wordingOf(build('F#', 'm7b5'), 'english').title)).toBe('F♯');
    expect(rootOf(wordingOf(scale('Bb', 'minor-pentatonic', 1, 11), 'english').title)).toBe('B♭');
    expect(rootOf('Name this place')).toBe('C');
  });

  it('has the third that the name says', () => {
    const third = (title: string) => keyInWords(title).degrees.some((degree) => degree === 'b3');
    for (const quality of ['minor', 'm7', 'm7b5', 'dim', 'dim7', 'm9', 'm6'] as const)
      expect(third(wordingOf(build('C', quality), 'english').title), quality).toBe(true);
    for (const quality of ['major', '7', 'maj7', 'sus4', 'aug', '6'] as const)
      expect(third(wordingOf(build('C', quality), 'english').title), quality).toBe(false);
    for (const id of ['natural-minor', 'minor-pentatonic', 'dorian', 'harmonic-minor'] as const)
      expect(third(wordingOf(scale('C', id, 1, 1), 'english').title), id).toBe(true);
    for (const id of ['major', 'major-pentatonic', 'mixolydian', 'lydian', 'phrygian-dominant'] as const)
      expect(third(wordingOf(scale('C', id, 1, 1), 'english').title), id).toBe(false);
  });
});

describe('what was heard, in words', () => {
  it('is named as the task would, in the reader’s naming', () => {
    const told = (heard: Heard, ...named: Parameters<typeof names>) =>
      panelWords({
        ...panel,
        answer: { places: [], heard, way: 'play' },
        playing: { as: heard.kind, taps: [] },
        names: names(...named),
      });
    expect(told(chordOf(1, 4, 9), 'Build A major')).toBe('Heard: A, C♯, E.');
    // The same sound in another task: there E is its third, lowered.
    expect(told(chordOf(1, 4, 9), 'Build D♭ major')).toBe('Heard: D♭, F♭, A.');
    expect(told(lineOf(60, 62, 63), 'C minor pentatonic')).toBe('Heard: C, D, E♭.');
    expect(told(chordOf(11, 3, 6), 'Build B major', 'german')).toBe('Heard: H, Dis, Fis.');
    expect(told(lineOf(70), 'Find B♭', 'solfege')).toBe('Heard: si♭.');
  });

  it('has no sign in it that a voice would skip', () => {
    expect(heardSaid(chordOf(9, 1, 4), names('Build A major'))).toBe('Heard: A, C sharp, E.');
    expect(heardSaid(lineOf(63), names('Find E♭'))).toBe('Heard: E flat.');
    for (let tone = 0; tone < 12; tone += 1)
      for (const title of ['Build C major', 'Build A♭ minor', 'Build D♯ minor'])
        expect(heardSaid(chordOf(tone), names(title))).not.toMatch(/[♭♯𝄫𝄪]/u);
  });

  it('is open while it is a hint', () => {
    expect(hintLine([{ pitchClass: 9 as PitchClass, confidence: 0.5 }], names('Build A major'))).toBe(
      'Heard: A …',
    );
  });
});

const panel: Panel = {
  open: true,
  way: 'play',
  may: 'on',
  listens: true,
  microphone: 'listening',
  midi: 'off',
  tooLoud: false,
  answer: noAnswer,
  hint: [],
  isDoubtful: false,
  playing: { as: 'line', taps: ['root'] },
  names: names('Find D'),
};
const played: Answer = { places: [], heard: lineOf(62), way: 'play' };

describe('the panel’s line', () => {
  it('says that it listens once it does', () => {
    expect(panelWords(panel)).toBe('Listening.');
    expect(panelWords({ ...panel, microphone: 'off' })).toBe('');
    expect(panelWords({ ...panel, listens: false, microphone: 'off' })).toBe('Turn Listen on, and play.');
  });

  it('says whose turn it is', () => {
    expect(panelWords({ ...panel, may: 'turn' })).toBe('Your turn to play. Listening.');
    expect(panelWords({ ...panel, way: 'tap', may: 'turn' })).toBe('Your turn to play.');
    expect(panelWords({ ...panel, way: 'tap', may: 'wait' })).toBe(
      'It is somebody else’s turn to play. Tapping goes on.',
    );
    expect(panelWords({ ...panel, way: 'tap' })).toBe('');
    // MIDI comes by wire: one may play in another's turn.
    expect(panelWords({ ...panel, way: 'midi', may: 'wait' })).toBe('Play.');
  });

  it('says what was heard, then what is still to do', () => {
    expect(panelWords({ ...panel, answer: played })).toBe(
      'Heard: D. Which string did you start on? Tap your root.',
    );
    const off: Answer = { places: [], heard: lineOf(60), way: 'play' };
    expect(panelWords({ ...panel, answer: off })).toBe('Heard: C. Tap the root that was asked for.');
    expect(panelWords({ ...panel, answer: played, playing: { as: 'line', taps: [] } })).toBe('Heard: D.');
    expect(panelWords({ ...panel, answer: played, isDoubtful: true })).toBe(
      'Heard: D. Not all of it was clear: play it once more, or keep it and tap your root.',
    );
    expect(
      panelWords({ ...panel, answer: played, isDoubtful: true, playing: { as: 'chord', taps: [] } }),
    ).toBe('Heard: D. Not all of it was clear: play it once more, or keep it.');
    expect(panelWords({ ...panel, answer: played, open: false })).toBe('Heard: D.');
    expect(tapAsked('lowest', played, panel.names)).toBe('Tap your lowest note.');
  });

  it('says what hinders before anything else, and what was heard is not lost', () => {
    expect(panelWords({ ...panel, tooLoud: true })).toBe('This room is too loud: answer by tapping.');
    expect(panelWords({ ...panel, answer: played, tooLoud: true })).toContain('Heard: D.');
    expect(panelWords({ ...panel, answer: played, microphone: 'ended' })).toContain('What was heard stays.');
    expect(panelWords({ ...panel, microphone: 'ended' })).not.toContain('What was heard');
  });

  it('says, where taps answer, that a tap replaces what was heard', () => {
    expect(panelWords({ ...panel, way: 'tap', answer: played })).toBe('Heard: D. A tap replaces it.');
  });

  it('offers tapping in every state of microphone and MIDI that hinders, in a line', () => {
    const hindering: readonly MicrophoneState[] = [
      'refused',
      'missing',
      'busy',
      'insecure',
      'unsupported',
      'ended',
    ];
    for (const state of hindering)
      for (const hasHeard of [true, false]) {
        const words = microphoneWords(state, hasHeard);
        expect(words, state).toMatch(/[Tt]ap/);
        expect(wordCount(words), words).toBeLessThan(15);
      }
    const midi: readonly MidiState[] = ['none', 'refused', 'unsupported', 'insecure'];
    for (const state of midi) expect(midiWords(state), state).toMatch(/[Tt]ap/);
    expect([microphoneWords('off', true), microphoneWords('listening', true)]).toEqual(['', '']);
  });

  it('says at the first wish what travels', () => {
    expect(whyListen).toContain('never leaves it');
    expect(whyListen).toContain('only the notes heard are sent');
  });
});
