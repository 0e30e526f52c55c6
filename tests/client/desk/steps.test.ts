import { describe, expect, test } from 'vitest';
import { actionOf, asksAgain, nextStep, stepBack, type Step } from '../../../client/pages/desk/live/steps.ts';
import type { DeskRoundView, DeskView } from '../../../shared/protocol/views.ts';
import { deskView, findOn2, round } from './desk-view.ts';

const plan: DeskView['plan'] = {
  id: 'plan' as NonNullable<DeskView['plan']>['id'],
  title: 'Second string',
  exercises: [
    { id: 'd', part: 'new', exercise: findOn2('D'), harder: [], seconds: null },
    { id: 'f', part: 'new', exercise: findOn2('F'), harder: [], seconds: 30 },
  ],
};

function inPhase(phase: DeskRoundView['phase'], more: Partial<DeskView> = {}): DeskView {
  return deskView({ plan, stage: 'round', rounds: [round({ phase, planIndex: 0 })], ...more });
}

const atRest = deskView({ plan, stage: 'rest' });
const voided = deskView({ plan, stage: 'rest', rounds: [round({ phase: 'open', voided: true })] });
const after = deskView({
  plan,
  stage: 'round',
  rounds: [round({ voided: true }), round({ phase: 'open', number: 2 })],
});
const words = { title: 'E minor', detail: '' };
const walk = (number: number) =>
  deskView({
    plan,
    show: {
      kind: 'chart',
      wording: { english: words, german: words, solfege: words },
      instrument: 'guitar',
      notes: [],
      silent: [],
      step: { number, of: 2 },
    },
  });
const steps: readonly Step[] = ['ask', 'hold', 'reveal', 'next', 'void', 'undo'];

function available(view: DeskView): readonly Step[] {
  return steps.filter((step) => actionOf(step, view).kind !== 'nothing');
}

describe('the next sensible step', () => {
  test.each([
    ['at rest', atRest, 'ask'],
    ['open', inPhase('open'), 'hold'],
    ['held', inPhase('held'), 'reveal'],
    ['revealed', inPhase('revealed'), 'next'],
    ['after a round was taken back', voided, 'ask'],
    ['on a walk through charts', walk(1), 'next'],
    ['once the class is over', deskView({ closed: true }), null],
  ])('%s', (_, view, step) => {
    expect(nextStep(view)).toBe(step);
  });

  test('always does something while the class lasts', () => {
    for (const view of [
      atRest,
      inPhase('open'),
      inPhase('held'),
      inPhase('revealed'),
      voided,
      deskView({}),
    ]) {
      const step = nextStep(view);
      expect(step && actionOf(step, view).kind).not.toBe('nothing');
    }
  });
});

describe('what each step does', () => {
  test('asks what the plan has at its cursor, with its own time limit', () => {
    expect(actionOf('ask', atRest)).toEqual({
      kind: 'command',
      command: { kind: 'ask-planned', seconds: null },
    });
  });

  test('makes an exercise where there is no plan, or where it ends', () => {
    expect(actionOf('ask', deskView({}))).toEqual({ kind: 'make' });
    expect(actionOf('ask', deskView({ plan, cursor: 2 }))).toEqual({ kind: 'make' });
  });

  test('asks the same again once a round is held or revealed', () => {
    expect(asksAgain(inPhase('open'))).toBe(false);
    for (const view of [inPhase('held'), inPhase('revealed')]) {
      expect(asksAgain(view)).toBe(true);
      expect(actionOf('ask', view)).toEqual({ kind: 'command', command: { kind: 'ask-again' } });
    }
  });

  test('passes over an exercise with Next at rest, and stops at the end of the plan', () => {
    expect(actionOf('next', atRest)).toEqual({ kind: 'command', command: { kind: 'select', index: 1 } });
    expect(actionOf('next', deskView({ plan, cursor: 1 })).kind).toBe('nothing');
  });

  test('walks through charts with Next, and clears the stage after the last', () => {
    expect(actionOf('next', walk(1))).toEqual({ kind: 'command', command: { kind: 'show-step', at: 1 } });
    expect(actionOf('next', walk(2))).toEqual({ kind: 'command', command: { kind: 'show-nothing' } });
    expect(stepBack(walk(2))).toEqual({ kind: 'command', command: { kind: 'show-step', at: 0 } });
    expect(stepBack(walk(1)).kind).toBe('nothing');
  });

  test.each([
    ['at rest', atRest, ['ask', 'next']],
    ['open', inPhase('open'), ['hold', 'void']],
    ['held', inPhase('held'), ['ask', 'reveal', 'next', 'void', 'undo']],
    ['revealed', inPhase('revealed'), ['ask', 'next', 'void']],
    ['after a round was taken back', voided, ['ask', 'next', 'undo']],
    ['in a round after one that was taken back', after, ['hold', 'void']],
    ['once the class is over', inPhase('held', { closed: true }), []],
  ] as const)('%s, what can be done', (_, view, expected) => {
    expect(available(view)).toEqual(expected);
  });
});

describe('one step back', () => {
  test('never takes answers away', () => {
    expect(stepBack(inPhase('open')).kind).toBe('nothing');
    expect(stepBack(inPhase('held'))).toEqual({ kind: 'command', command: { kind: 'undo' } });
    expect(stepBack(inPhase('revealed'))).toEqual({ kind: 'command', command: { kind: 'ask-again' } });
  });

  test('goes to the exercise before, not beyond the first', () => {
    expect(stepBack(deskView({ plan, cursor: 1 }))).toEqual({
      kind: 'command',
      command: { kind: 'select', index: 0 },
    });
    expect(stepBack(atRest).kind).toBe('nothing');
  });
});
