// `npm run bench`: theory and the store; `npm run bench listening`: what is heard of sound that nothing was trained on.
// With the production build, `npm run bench live`: the live wire;
// `npm run bench paint`: the first look on a slow phone; `npm run bench plan`: moving an exercise of a long plan;
// `npm run bench frames`: a Stand that listens on a slow phone.
import './lib/check-node.mjs';

const noChromium = 'This needs Chromium: install it, or say where it is with CHROMIUM_PATH.';

Promise.all([import('./lib/project.mjs'), import('./lib/chromium.mjs')]).then(
  ([{ build, giveUp, install, tool }, { ensureChromium }]) => {
    install();
    const [what, ...which] = process.argv.slice(2);
    const runner = '../tests/server/store/run-typescript.mjs';
    if (what === 'listening') {
      process.exitCode = tool(runner, ['tests/bench/listening/main.ts', ...which]) ? 0 : 1;
      return;
    }
    if (!['live', 'paint', 'plan', 'frames'].includes(what)) {
      process.exitCode = tool('vitest/vitest.mjs', ['bench', '--run', ...process.argv.slice(2)]) ? 0 : 1;
      return;
    }
    build();
    const args = what === 'live' ? which : [ensureChromium() ?? giveUp(noChromium)];
    process.exitCode = tool(runner, [`tests/bench/${what}/main.ts`, ...args]) ? 0 : 1;
  },
);
