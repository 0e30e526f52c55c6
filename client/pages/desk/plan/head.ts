import { html, type TemplateResult } from 'lit';
import type { PlanContent } from '../../../../shared/plans/plan.ts';
import { mostPoints } from '../../../../shared/protocol/plans.ts';

/** What is written over a plan's exercises, and what becomes of it; a sentence where it can't be kept. */
export interface HeadWays {
  readonly write: (words: string, to: Partial<PlanContent>) => void;
  readonly refuse: (sentence: string) => void;
}

const longest = 300;

export function planTitle({ title }: PlanContent, { write }: HeadWays): TemplateResult {
  return html`<label class="title">
    <span class="visually-hidden">Title of the plan</span>
    <input
      .value=${title}
      maxlength="80"
      @change=${(event: Event) => {
        const field = event.target as HTMLInputElement;
        const written = field.value.trim();
        // A plan needs a title: an empty field takes the old one back.
        if (written === '') field.value = title;
        else if (written !== title) write('change the title', { title: written });
      }}
    />
  </label>`;
}

export function planHead({ aim, points }: PlanContent, { write, refuse }: HeadWays): TemplateResult {
  return html`<div class="head">
    <label
      >What they can do afterwards
      <input
        .value=${aim}
        maxlength=${longest}
        @change=${(event: Event) => {
          const written = (event.target as HTMLInputElement).value.trim();
          if (written !== aim) write('change what they can do afterwards', { aim: written });
        }}
      />
    </label>
    <label
      ><span>Things to say <span class="soft small">one a line</span></span>
      <textarea
        rows=${Math.max(2, points.length + 1)}
        .value=${points.join('\n')}
        @change=${(event: Event) => {
          const written = linesIn((event.target as HTMLTextAreaElement).value);
          if (written.length > mostPoints)
            refuse(`${String(mostPoints)} things to say are the most. Put some together.`);
          else if (written.some((line) => line.length > longest))
            refuse(`One thing to say is longer than ${String(longest)} characters. Divide it.`);
          else if (written.join('\n') !== points.join('\n'))
            write('change the things to say', { points: written });
        }}
      ></textarea>
    </label>
  </div>`;
}

function linesIn(text: string): readonly string[] {
  return text
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '');
}
