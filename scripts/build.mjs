import './lib/check-node.mjs';

import('./lib/project.mjs').then(({ build, install }) => {
  install();
  build();
});
