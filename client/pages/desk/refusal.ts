import { html, type TemplateResult } from 'lit';

/** The place where a form says why something was refused; read out when it fills. */
export function refusalLine(message: string): TemplateResult {
  return html`<p class="refusal" role="alert">${message}</p>`;
}

/** The text of a form's field, as typed: the server trims what may be trimmed. */
export function fieldText(form: HTMLFormElement, name: string): string {
  const value = new FormData(form).get(name);
  return typeof value === 'string' ? value : '';
}

/** The form behind a submit event, with the browser's own sending stopped. */
export function formOf(event: SubmitEvent): HTMLFormElement | null {
  event.preventDefault();
  return event.currentTarget instanceof HTMLFormElement ? event.currentTarget : null;
}
