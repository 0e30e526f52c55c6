import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { ensureChromium } from './chromium.mjs';
import { install, tool, tryBuild } from './project.mjs';

/** Every step runs whatever became of those before it, so that one look shows all that is amiss. */

install();
const reports = mkdtempSync(join(tmpdir(), 'rootcall-reports-'));
const unitReport = join(reports, 'unit.json');
const browserReport = join(reports, 'browser.json');

const steps = [
  ['Types', () => tool('typescript/bin/tsc', ['-b'])],
  ['Lint', () => tool('eslint/bin/eslint.js', ['--max-warnings', '0', '.'])],
  ['Format', () => tool('prettier/bin/prettier.cjs', ['--check', '.', '--log-level', 'warn'])],
  ['Production build', tryBuild],
  ['Unit and references', checkUnits],
  ['Browser', checkBrowser],
];

const notPassed = [];
for (const [name, check] of steps) {
  process.stdout.write(`\n== ${name}\n`);
  if (!check()) notPassed.push(name);
}

const unit = read(unitReport);
const browser = read(browserReport);
rmSync(reports, { recursive: true });
const passed = (unit?.numPassedTests ?? 0) + (browser?.stats?.expected ?? 0);
const failed = (unit?.numFailedTests ?? 0) + (browser?.stats?.unexpected ?? 0);
const ok = notPassed.length === 0 && passed > 0;
if (notPassed.length > 0) process.stdout.write(`\nNot passed: ${notPassed.join(', ')}.\n`);
// Types, lint, or a file that can't be loaded fail without a failing test: they count, so that "0 failed" means it.
process.stdout.write(`\n${passed} passed, ${ok ? 0 : Math.max(failed, notPassed.length, 1)} failed\n`);
process.exitCode = ok ? 0 : 1;

function checkUnits() {
  const output = ['--reporter=dot', '--reporter=json', `--outputFile.json=${unitReport}`];
  return tool('vitest/vitest.mjs', ['run', ...output]);
}

function checkBrowser() {
  const chromium = ensureChromium();
  if (!chromium || !existsSync(chromium)) {
    const advice = 'Install it, or say where it is with CHROMIUM_PATH.';
    process.stderr.write(
      `The browser tests need Chromium${chromium ? `: ${chromium} is not there` : ''}. ${advice}\n`,
    );
    return false;
  }
  const env = { ...process.env, CHROMIUM_PATH: chromium, PLAYWRIGHT_JSON_OUTPUT_FILE: browserReport };
  return tool('@playwright/test/cli.js', ['test', '--reporter=line,json'], { env });
}

function read(file) {
  try {
    return JSON.parse(readFileSync(file, 'utf8'));
  } catch {
    return undefined;
  }
}
