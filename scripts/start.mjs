// `npm start`: installs and builds what is missing or stale, then serves in this same process.
import './lib/check-node.mjs';

import('./lib/project.mjs').then(({ build, install }) => {
  install();
  build();
  return import('../dist/server/main.js');
});
