import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { giveUp, root } from './project.mjs';

const usual = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];

/** The path of a Chromium: told, the system's, Playwright's own, else installed; ends with advice where none is. */
export function ensureChromium() {
  const found = findChromium();
  if (found) return found;
  process.stdout.write('No Chromium found: installing one for the browser tests.\n');
  spawnSync(process.execPath, ['node_modules/playwright/cli.js', 'install', 'chromium'], {
    cwd: root,
    stdio: 'ignore',
  });
  if (!playwrightsOwn() && process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')) {
    spawnSync('apt-get', ['update'], { stdio: 'ignore' });
    spawnSync('apt-get', ['install', '-y', 'chromium'], { stdio: 'ignore' });
  }
  return (
    findChromium() ??
    giveUp('The browser tests need Chromium. Install it, or say where it is with CHROMIUM_PATH.')
  );
}

function findChromium() {
  const told = process.env['CHROMIUM_PATH'];
  if (told) return existsSync(told) ? told : giveUp(`CHROMIUM_PATH says ${told}, and nothing is there.`);
  for (const name of usual) {
    const { status, stdout } = spawnSync('which', [name], { encoding: 'utf8' });
    if (status === 0) return stdout.trim();
  }
  return playwrightsOwn();
}

function playwrightsOwn() {
  try {
    const path = createRequire(import.meta.url)('playwright').chromium.executablePath();
    return existsSync(path) ? path : undefined;
  } catch {
    return undefined;
  }
}
