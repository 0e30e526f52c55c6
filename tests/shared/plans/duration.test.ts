import { expect, test } from 'vitest';
import { course } from '../../../shared/plans/course.ts';
import { minutesOf } from '../../../shared/plans/duration.ts';

// The minutes of the lessons are what their author gave them: nothing outside says how long a lesson takes.
test('PLAN-8: what a lesson takes is guessed to within 3 minutes of what its author gave it', () => {
  for (const { title, minutes, exercises } of course)
    expect(Math.abs(minutesOf(exercises) - minutes), title).toBeLessThanOrEqual(3);
});
