import { nothing, type SVGTemplateResult } from 'lit';

/** What a drawing is in text, without a page to draw it on. */
export function templateText(value: unknown): string {
  if (value === nothing || value === null || value === undefined) return '';
  if (Array.isArray(value)) return value.map(templateText).join('');
  if (!isTemplate(value)) return String(value);
  return value.strings.map((text, index) => text + templateText(value.values[index])).join('');
}

function isTemplate(value: unknown): value is SVGTemplateResult {
  return typeof value === 'object' && value !== null && 'strings' in value;
}

/** "string fret" of every mark of a drawing, in its order; a silent string's fret is "silent". */
export function placesIn(drawing: unknown): readonly string[] {
  return [...templateText(drawing).matchAll(/data-string=(\d+) data-fret=(\w+)/g)].map(
    ([, string = '', fret = '']) => `${string} ${fret}`,
  );
}
