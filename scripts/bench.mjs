// `npm run bench`: theory and the store. `npm run bench live`: the live wire, with the production build.
import './lib/check-node.mjs';

import('./lib/project.mjs').then(({ build, install, tool }) => {
  install();
  const [what, ...which] = process.argv.slice(2);
  if (what !== 'live') {
    process.exitCode = tool('vitest/vitest.mjs', ['bench', '--run', ...process.argv.slice(2)]) ? 0 : 1;
    return;
  }
  build();
  const runner = '../tests/server/store/run-typescript.mjs';
  process.exitCode = tool(runner, ['tests/bench/live/main.ts', ...which]) ? 0 : 1;
});
