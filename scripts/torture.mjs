// `npm run torture`: kills, power cuts, nonsense and long classes, on the production build.
import './lib/check-node.mjs';

import('./lib/project.mjs').then(({ build, install, tool }) => {
  install();
  build();
  const runner = '../tests/server/store/run-typescript.mjs';
  process.exitCode = tool(runner, ['tests/torture/main.ts', ...process.argv.slice(2)]) ? 0 : 1;
});
