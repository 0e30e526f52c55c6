import { html, type TemplateResult } from 'lit';
import type { Finger, ScaleOrder } from '../../../../shared/exercise/exercise.ts';
import { choiceField, type Choice } from './choice-field.ts';
import type { Draft } from './draft.ts';
import { fingers, orderWords } from './words.ts';

/** How a scale is played: position, how much of it, in which order. */
export function scaleFields(draft: Draft, change: (change: Partial<Draft>) => void): TemplateResult {
  return html`${choiceField(
    'What to place',
    {
      choices: [
        ['every-pitch', 'every note of the position'],
        ['every-tone', 'every note name once'],
      ],
    },
    draft.coverage,
    (value) => change({ coverage: value === 'every-tone' ? 'every-tone' : 'every-pitch' }),
  )}
  ${choiceField(
    'Order',
    { choices: [['', 'in any order'], ...Object.entries(orderWords)] },
    draft.order ?? '',
    (value) => change({ order: value === '' ? null : (value as ScaleOrder) }),
  )}
  ${choiceField('How it lies', { choices: layouts }, layoutOf(draft), (value) => change(layoutFields(value)))}`;
}

const countWords = { 2: 'two', 3: 'three' } as const;
const places = ['first', 'second', 'third'];

/** A position by the finger on the root, or a number of notes on every string by where the root comes among them. */
const layouts: readonly Choice[] = [
  ...fingers.map(
    (finger) => [`hand ${String(finger)}`, `one position, root under finger ${String(finger)}`] as const,
  ),
  ...([2, 3] as const).flatMap((notes) =>
    Array.from({ length: notes }, (_, index): Choice => {
      const words = `${countWords[notes]} notes a string, the root ${places[index] ?? ''}`;
      return [`${String(notes)} ${String(index + 1)}`, words];
    }),
  ),
  ['along', 'along the root string'],
];

function layoutOf({ perString, oneString, rootFinger }: Draft): string {
  if (oneString) return 'along';
  return perString ? `${String(perString.notes)} ${String(perString.rootAt)}` : `hand ${String(rootFinger)}`;
}

function layoutFields(layout: string): Partial<Draft> {
  const [kind, at] = layout.split(' ');
  const whole = { perString: null, oneString: false };
  if (kind === 'along') return { ...whole, oneString: true, coverage: 'every-pitch' };
  if (kind === 'hand') return { ...whole, rootFinger: Number(at) as Finger };
  return {
    ...whole,
    perString: { notes: kind === '2' ? 2 : 3, rootAt: Number(at) },
    coverage: 'every-pitch',
  };
}
