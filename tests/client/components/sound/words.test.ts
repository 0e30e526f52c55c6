import { describe, expect, it } from 'vitest';
import {
  centsFigure,
  centsWords,
  roomWords,
  stateWords,
  stringName,
  tunedSaid,
  tuneWords,
} from '../../../../client/components/sound/words.ts';
import type { MicrophoneState } from '../../../../client/listening/events.ts';
import { known } from '../../../../shared/lib/assert.ts';
import { instrumentById, place, standardGuitar } from '../../../../shared/theory/fretboard.ts';

const { string: string2 } = place(2, 0);

describe('what the sound check says', () => {
  it('says nothing while the microphone listens, or has not been asked for', () => {
    for (const state of ['off', 'listening'] as const)
      expect(stateWords(state)).toEqual({ sentence: '', help: '' });
  });

  it.each([
    ['refused', /allow the microphone/],
    ['missing', /Plug one in/],
    ['busy', /call or program/],
    ['insecure', /npm start -- --https/],
    ['unsupported', /newer browser/],
    ['ended', /allow it again/],
  ] as const)('says what to do where the microphone is %s', (state: MicrophoneState, help) => {
    expect(stateWords(state).sentence).not.toBe('');
    expect(stateWords(state).help).toMatch(help);
  });

  it('sends whoever sits in a room that is too loud to the taps', () => {
    expect(roomWords(-40)).toBe('This room is too loud: answer by tapping.');
    for (const floor of [-90, -60, -50]) expect(roomWords(floor)).not.toContain('too loud');
  });

  it.each([
    [0.3, '0 cents', 'In tune', ''],
    [-1.4, '−1 cent', 'In tune', ''],
    [3.4, '+3 cents', 'In tune', ''],
    [3.6, '+4 cents', '4 cents sharp', ': loosen the string'],
    [-12, '−12 cents', '12 cents flat', ': tighten the string'],
    [99.4, '+99 cents', '99 cents sharp', ': loosen the string'],
    [-180, '−180 cents', 'More than a semitone flat', ': tighten the string'],
  ])('calls %d cents “%s”, “%s”, “%s”', (cents, figure, words, help) => {
    expect(centsFigure(cents)).toBe(figure);
    expect(centsWords(cents)).toBe(words);
    expect(tuneWords(cents)).toBe(help);
  });

  it('names a string as its reader does', () => {
    expect(stringName(standardGuitar, string2, 'english')).toBe('B');
    expect(stringName(standardGuitar, string2, 'german')).toBe('H');
    expect(stringName(standardGuitar, string2, 'solfege')).toBe('si');
  });

  it('is read aloud without signs that a voice skips', () => {
    const halfDown = known(instrumentById('guitar-half-down'), 'half down');
    expect(tunedSaid({ string: string2, cents: -7 }, halfDown, 'english')).toBe(
      'String 2, B flat: 7 cents flat.',
    );
    expect(tunedSaid({ string: string2, cents: 0 }, standardGuitar, 'english')).toBe('String 2, B: in tune.');
  });
});
