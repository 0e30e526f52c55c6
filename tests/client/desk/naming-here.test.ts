import { afterEach, expect, test } from 'vitest';
import { chooseNaming, namingChoice, NamingHere } from '../../../client/pages/desk/naming-here.ts';

function host() {
  const state = { drawn: 0 };
  const naming = new NamingHere({
    addController: () => undefined,
    removeController: () => undefined,
    requestUpdate: () => {
      state.drawn += 1;
    },
    updateComplete: Promise.resolve(true),
  });
  return { state, naming };
}

afterEach(() => {
  chooseNaming('group');
});

test('notes are named as the group does, until the teacher chooses a naming', () => {
  const { naming } = host();
  expect(naming.of('german')).toBe('german');
  chooseNaming('solfege');
  expect(namingChoice()).toBe('solfege');
  expect(naming.of('german')).toBe('solfege');
  chooseNaming('group');
  expect(naming.of('german')).toBe('german');
});

test('pages that are shown are drawn again, others are not', () => {
  const { state, naming } = host();
  naming.hostConnected();
  chooseNaming('german');
  naming.hostDisconnected();
  chooseNaming('english');
  expect(state.drawn).toBe(1);
});
