import type { Page } from '@playwright/test';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** axe is brought in by text, which the pages' own policy rightly refuses: the browser context's options. */
export const inspected = { bypassCSP: true };

/** Serious findings of axe on a page, light and dark. */
export async function findings(page: Page): Promise<readonly string[]> {
  const found: string[] = [];
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
    const serious = await page.evaluate(async (source) => {
      const scope = window as unknown as {
        axe?: {
          run(): Promise<{
            violations: readonly { id: string; impact: string; nodes: readonly { html: string }[] }[];
          }>;
        };
      };
      if (!scope.axe) new Function(source)();
      const { violations } = (await scope.axe?.run()) ?? { violations: [] };
      return violations
        .filter(({ impact }) => impact === 'serious' || impact === 'critical')
        .map(({ id, nodes }) => `${id}: ${nodes[0]?.html ?? ''}`);
    }, axe);
    found.push(...serious.map((finding) => `${colorScheme} ${finding}`));
  }
  return found;
}
