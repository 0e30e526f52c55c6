// `npm run backup`: copies the store into a file.
import './lib/check-node.mjs';

import('./lib/project.mjs').then(({ build, install }) => {
  install();
  build();
  return import('../dist/server/backup.js');
});
