import { html, nothing } from 'lit';
import type { Exercise } from '../../../../shared/exercise/exercise.ts';
import { levelName, type Level } from '../../../../shared/exercise/levels.ts';
import { wordingOf } from '../../../../shared/exercise/wording.ts';
import type { NoteNaming } from '../../../../shared/theory/naming.ts';

/** "3 levels". */
export function levelCount(harder: readonly Exercise[]): string {
  return `${String(harder.length + 1)} levels`;
}

/** What the second and third level ask, in one line. */
export function harderLine(harder: readonly Exercise[], naming: NoteNaming) {
  if (harder.length === 0) return nothing;
  return html`<p>
    ${harder.map(
      (exercise, index) =>
        html`${levelName((index + 2) as Level)}: <b>${wordingOf(exercise, naming).title}.</b> `,
    )}
  </p>`;
}

/** The same with its details, a line each. */
export function harderLines(harder: readonly Exercise[], naming: NoteNaming) {
  return harder.map((exercise, index) => {
    const { title, detail } = wordingOf(exercise, naming);
    return html`<p>
      ${levelName((index + 2) as Level)}: <b>${title}</b> <span class="soft">${detail}</span>
    </p>`;
  });
}
