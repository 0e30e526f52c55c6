import { describe, expect, it } from 'vitest';
import { isAltered, stateOf } from '../../../client/listening/asking.ts';

// Names of errors: Media Capture and Streams (W3C), getUserMedia. The microphone itself is tried in
// tests/e2e/sound.spec.ts, in a browser.
describe('why a microphone is not given', () => {
  it.each([
    ['NotAllowedError', 'refused'],
    ['SecurityError', 'refused'],
    ['NotFoundError', 'missing'],
    ['OverconstrainedError', 'missing'],
    ['NotReadableError', 'busy'],
    ['AbortError', 'busy'],
    ['InvalidStateError', 'unsupported'],
  ])('is told by the browser as %s, and is called “%s” here', (name, state) => {
    expect(stateOf(new DOMException('', name))).toBe(state);
  });

  it('has a name also where something else goes wrong', () => {
    expect(stateOf(new TypeError('no such thing'))).toBe('unsupported');
    expect(stateOf('nothing')).toBe('unsupported');
  });
});

describe('whether a device alters the sound', () => {
  it.each([
    [{ echoCancellation: false, noiseSuppression: false, autoGainControl: false }, false],
    [{}, false],
    [{ echoCancellation: false }, false],
    [{ echoCancellation: false, noiseSuppression: true }, true],
    [{ autoGainControl: true }, true],
  ])('is read back from %o: %s', (settings, altered) => {
    expect(isAltered(settings)).toBe(altered);
  });
});
