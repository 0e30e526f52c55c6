import { describe, expect, test } from 'vitest';
import { StepLine } from '../../../client/pages/desk/live/step-line.ts';
import { deskView, round } from './desk-view.ts';

const atRest = deskView({ stage: 'rest' });
const open = deskView({ stage: 'round', rounds: [round({ phase: 'open' })] });
/** An answer has come in, and nothing else has changed. */
const answered = deskView({ ...open, rounds: [round({ phase: 'open', share: { right: 1, of: 1 } })] });
const held = deskView({ stage: 'round', rounds: [round({ phase: 'held' })] });

function asking(): StepLine {
  const line = new StepLine();
  line.start('ask', atRest);
  return line;
}

describe('a key pressed while a step is under way', () => {
  test('waits for the view that the step leads to', () => {
    const line = asking();
    line.wait('hold');
    expect(line.next(open)).toBeNull();
    line.replied(true, 0);
    expect(line.next(atRest)).toBeNull();
    expect(line.isFree(1)).toBe(false);
    expect(line.next(open)).toBe('hold');
    expect(line.isFree(1)).toBe(true);
  });

  test('does not take an answer coming in for the step', () => {
    const line = new StepLine();
    line.start('hold', open);
    line.wait('reveal');
    line.replied(true, 0);
    expect(line.next(answered)).toBeNull();
    expect(line.next(held)).toBe('reveal');
  });

  test('is dropped where it is the same key once more', () => {
    const line = asking();
    line.wait('ask');
    line.replied(true, 0);
    expect(line.next(open)).toBeNull();
    expect(line.isFree(1)).toBe(true);
  });

  test('is dropped where the step was refused', () => {
    const line = asking();
    line.wait('hold');
    line.replied(false, 0);
    expect(line.isFree(0)).toBe(true);
    expect(line.next(open)).toBeNull();
  });

  test('keeps its place behind the keys pressed before it', () => {
    const line = asking();
    line.wait('hold');
    line.wait('reveal');
    line.replied(true, 0);
    expect(line.next(open)).toBe('hold');
    line.start('hold', open);
    expect(line.next(open)).toBeNull();
    line.replied(true, 0);
    expect(line.next(held)).toBe('reveal');
    expect(line.next(held)).toBeNull();
  });
});

test('a step that changes nothing holds the line no longer than its view may take', () => {
  const line = asking();
  line.replied(true, 100);
  expect(line.isFree(1600)).toBe(false);
  expect(line.isFree(1601)).toBe(true);
});
