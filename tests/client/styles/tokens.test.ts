import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

const css = readFileSync(new URL('../../../client/styles/tokens.css', import.meta.url), 'utf8');

/** The custom properties of the block that a selector opens. */
function block(selector: string): ReadonlyMap<string, string> {
  const start = css.indexOf(`${selector} {`);
  expect(start, selector).toBeGreaterThanOrEqual(0);
  const body = css.slice(start, css.indexOf('}', start));
  return new Map(
    [...body.matchAll(/(--[\w-]+):\s*([^;]+);/g)].map(([, name = '', value = '']) => [name, value]),
  );
}

const light = block(':root');
const dark = new Map([...light, ...block(":root[data-theme='dark']")]);

/** Relative luminance and contrast as WCAG 2.2 defines them. */
function luminance(hex: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
    const channel = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function contrast(theme: ReadonlyMap<string, string>, one: string, other: string): number {
  const [high = 0, low = 0] = [one, other]
    .map((name) => theme.get(`--${name}`) ?? '')
    .map((hex) => {
      expect(hex, `${one} on ${other}`).toMatch(/^#[0-9a-f]{6}$/);
      return luminance(hex);
    })
    .sort((a, b) => b - a);
  return (high + 0.05) / (low + 0.05);
}

describe.each([
  ['light', light],
  ['dark', dark],
])('%s', (_, theme) => {
  // WCAG 2.2: 1.4.3 for text, 1.4.11 for the marks and borders one needs to tell things apart.
  it.each([
    ...['ink', 'soft', 'brass', 'felt', 'rose'].flatMap((text) => [
      [text, 'page', 4.5] as const,
      [text, 'sheet', 4.5] as const,
    ]),
    ['ink', 'brass-wash', 4.5],
    ['on-fill', 'ink', 4.5],
    ['control', 'page', 3],
    ['control', 'sheet', 3],
    ...['wire', 'string', 'inlay', 'bone'].map((part) => [part, 'wood-lit', 3] as const),
    ['string', 'wood-edge', 4.5],
    ['on-bone', 'bone', 4.5],
    ['sent-rim', 'bone', 3],
    ...[1, 2, 3, 4].map((band) => [`on-heat-${String(band)}`, `heat-${String(band)}`, 4.5] as const),
    ['qr-dark', 'qr-light', 7],
  ] as const)('%s on %s is at least %d to 1', (one, other, least) => {
    expect(contrast(theme, one, other)).toBeGreaterThanOrEqual(least);
  });

  it('keeps the steps of heat apart in greyscale', () => {
    const steps = [1, 2, 3, 4].map((band) => luminance(theme.get(`--heat-${String(band)}`) ?? ''));
    const ratios = steps
      .slice(1)
      .map((step, at) => (Math.max(step, steps[at] ?? 0) + 0.05) / (Math.min(step, steps[at] ?? 0) + 0.05));
    for (const ratio of ratios) expect(ratio).toBeGreaterThan(1.5);
  });
});

it('dark by the device and dark by hand are the same', () => {
  expect(block(":root:not([data-theme='light'])")).toEqual(block(":root[data-theme='dark']"));
});
