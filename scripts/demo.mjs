// `npm run demo`: a class with simulated students, on the production build and a store of its own.
import './lib/check-node.mjs';

import('./lib/project.mjs').then(({ build, install }) => {
  install();
  build();
  return import('./lib/demo/run.mjs');
});
