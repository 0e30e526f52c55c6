// `npm run restore`: puts a backup in the place of the store.
import './lib/check-node.mjs';

import('./lib/project.mjs').then(({ build, install }) => {
  install();
  build();
  return import('../dist/server/restore.js');
});
