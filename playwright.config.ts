import { defineConfig } from '@playwright/test';
import { findChromium } from './scripts/lib/chromium.mjs';

const isRoot = process.getuid?.() === 0;

/** Every page is opened at http://rootcall.test: a phone has no secure context either. */
export default defineConfig({
  testDir: 'tests/e2e',
  testMatch: '*.spec.ts',
  timeout: 120_000,
  workers: 1,
  retries: 0,
  reporter: 'line',
  forbidOnly: Boolean(process.env['CI']),
  use: {
    launchOptions: {
      executablePath: findChromium(),
      args: [
        '--host-resolver-rules=MAP rootcall.test 127.0.0.1',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
        '--no-first-run',
        ...(isRoot ? ['--no-sandbox'] : []),
      ],
    },
  },
});
