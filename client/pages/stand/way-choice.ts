import { html, nothing, type TemplateResult } from 'lit';
import { wayName, type ChosenWay } from './ways.ts';

/** The ways to answer in one small field; nothing where there is only one. */
export function wayChoice(
  ways: readonly ChosenWay[],
  chosen: ChosenWay,
  disabled: boolean,
  choose: (way: ChosenWay) => void,
): TemplateResult | typeof nothing {
  if (ways.length < 2) return nothing;
  const onChange = ({ target }: Event) => {
    if (!(target instanceof HTMLSelectElement)) return;
    const way = ways.find((other) => other === target.value);
    if (way) choose(way);
  };
  return html`<select class="way" aria-label="Answer by" ?disabled=${disabled} @change=${onChange}>
    ${ways.map((way) => html`<option value=${way} .selected=${way === chosen}>${wayName[way]}</option>`)}
  </select>`;
}
