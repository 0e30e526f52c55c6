import type { TemplateResult } from 'lit';
import { expect, test } from 'vitest';
import { DeskAsking } from '../../../client/pages/desk/live/asking.ts';
import { DeskDrawer } from '../../../client/pages/desk/live/drawer.ts';
import type { DeskView, DeskStudentView } from '../../../shared/protocol/views.ts';
import { deskView } from './desk-view.ts';

/** A value of a template, and the markup that comes before it. */
interface Slot {
  readonly before: string;
  readonly value: unknown;
}

function isTemplate(value: unknown): value is TemplateResult {
  return typeof value === 'object' && value !== null && 'strings' in value;
}

/** What a list, or Lit's `repeat` (list, key, row), puts there. */
function rowsOf(value: unknown): readonly unknown[] {
  if (Array.isArray(value)) return value;
  if (typeof value !== 'object' || value === null || !('values' in value)) return [value];
  const [items, , row] = value.values as [readonly unknown[], unknown, (item: unknown) => unknown];
  return items.map((item) => row(item));
}

/** Every slot of a template and of those inside it. */
function slotsOf({ strings, values }: TemplateResult): readonly Slot[] {
  return values.flatMap((value, index) => [
    { before: strings.slice(0, index + 1).join(''), value },
    ...(isTemplate(value) ? [value] : rowsOf(value)).filter(isTemplate).flatMap(slotsOf),
  ]);
}

/** For each place of the name: whether it is text, never markup, and set apart from the text around it. */
function isSetApart(name: string, template: unknown): readonly boolean[] {
  return (isTemplate(template) ? slotsOf(template) : [])
    .filter(({ value }) => value === name)
    .map(({ before }) => /<(bdi|\w+[^<>]* dir="auto"[^<>]*)>(<b>)?$/.test(before));
}

test.each(['<script>alert(1)</script>', '"><img src=x onerror=alert(1)>', 'نور 1', '👩‍🎤'])(
  'EDGE-2: %s is text, set apart from the text around it',
  (name) => {
    const asking = new DeskAsking();
    asking.asking = (['new', 'move', 'refused'] as const).map((reason) => ({
      seatId: reason as string as DeskView['asking'][number]['seatId'],
      name,
      reason,
    }));
    expect(isSetApart(name, asking.render())).toEqual([true, true, true]);

    const drawer = new DeskDrawer();
    const student: DeskStudentView = {
      id: 'student' as DeskStudentView['id'],
      name,
      seatNumber: null,
      alias: null,
      team: null,
      moreTime: 1,
      presence: 'here',
      answer: null,
      late: null,
      pattern: null,
    };
    drawer.view = deskView({ students: [student] });
    expect(isSetApart(name, drawer.render())).toEqual([true]);
  },
);
