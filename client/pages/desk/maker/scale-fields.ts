import { html, type TemplateResult } from 'lit';
import type { Finger, ScaleOrder } from '../../../../shared/exercise/exercise.ts';
import { choiceField } from './choice-field.ts';
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
  ${choiceField(
    'Finger on the root',
    { choices: fingers.map((finger) => [String(finger), String(finger)]) },
    String(draft.rootFinger),
    (value) => change({ rootFinger: Number(value) as Finger }),
  )}`;
}
