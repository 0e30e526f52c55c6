import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { ensureChromium } from './lib/chromium.mjs';
import { build, checkNode, install, tool } from './lib/project.mjs';

// `npm test`: the whole of the checking. Every step runs, so that one look shows all that is amiss.
checkNode();
install();
const reports = mkdtempSync(join(tmpdir(), 'rootcall-reports-'));
const unitReport = join(reports, 'unit.json');
const browserReport = join(reports, 'browser.json');

const steps = [
  ['Types', () => tool('typescript/bin/tsc', ['-b'])],
  ['Lint', () => tool('eslint/bin/eslint.js', ['--max-warnings', '0', '.'])],
  ['Format', () => tool('prettier/bin/prettier.cjs', ['--check', '.', '--log-level', 'warn'])],
  [
    'Unit and references',
    () =>
      tool('vitest/vitest.mjs', [
        'run',
        '--reporter=dot',
        '--reporter=json',
        `--outputFile.json=${unitReport}`,
      ]),
  ],
  [
    'Browser',
    () => {
      build();
      const env = {
        ...process.env,
        CHROMIUM_PATH: ensureChromium(),
        PLAYWRIGHT_JSON_OUTPUT_FILE: browserReport,
      };
      return tool('@playwright/test/cli.js', ['test', '--reporter=line,json'], { env });
    },
  ],
];

let stepsFailed = 0;
for (const [name, check] of steps) {
  process.stdout.write(`\n== ${name}\n`);
  if (check()) continue;
  stepsFailed += 1;
  process.stdout.write(`== ${name}: not passed\n`);
}

const unit = read(unitReport);
const browser = read(browserReport);
const passed = (unit?.numPassedTests ?? 0) + (browser?.stats?.expected ?? 0);
const failed = (unit?.numFailedTests ?? 0) + (browser?.stats?.unexpected ?? 0);
rmSync(reports, { recursive: true });
// A step that fails without a failing test (types, lint, a crash) still counts.
process.stdout.write(`\n${passed} passed, ${failed === 0 ? stepsFailed : failed} failed\n`);
process.exit(stepsFailed === 0 && passed > 0 ? 0 : 1);

function read(file) {
  try {
    return JSON.parse(readFileSync(file, 'utf8'));
  } catch {
    return undefined;
  }
}
