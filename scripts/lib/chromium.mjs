import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { onPath, root } from './project.mjs';

const usual = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];

/** The path of a Chromium: told, the system's, or Playwright's own; undefined where there is none. */
export function findChromium() {
  return process.env['CHROMIUM_PATH'] || onPath(usual) || playwrightsOwn();
}

/** The same, and where there is none, one is installed; undefined where that can't be done either. */
export function ensureChromium() {
  const found = findChromium();
  if (found) return found;
  process.stdout.write('No Chromium found: installing one for the browser tests.\n');
  const quiet = { cwd: root, stdio: 'ignore', timeout: 180_000 };
  spawnSync(process.execPath, ['node_modules/playwright/cli.js', 'install', 'chromium'], quiet);
  if (!playwrightsOwn() && process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')) {
    const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
    spawnSync('apt-get', ['update'], { ...quiet, env });
    spawnSync('apt-get', ['install', '-y', 'chromium'], { ...quiet, env });
  }
  return findChromium();
}

function playwrightsOwn() {
  try {
    const path = createRequire(import.meta.url)('playwright').chromium.executablePath();
    return existsSync(path) ? path : undefined;
  } catch {
    return undefined;
  }
}
