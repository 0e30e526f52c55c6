import { html, nothing, type TemplateResult } from 'lit';
import '../../components/mark.ts';

/** Whose class, and whose Stand. */
export function standHeader(group: string, student = ''): TemplateResult {
  return html`<header>
    <rootcall-mark></rootcall-mark>
    <span dir="auto">${group}</span>
    ${student === '' ? nothing : html`<span class="student" dir="auto">${student}</span>`}
  </header>`;
}
