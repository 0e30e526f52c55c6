// `npm run passphrase`: gives a teacher a new passphrase.
import './lib/check-node.mjs';

import('./lib/project.mjs').then(({ build, install }) => {
  install();
  build();
  return import('../dist/server/passphrase.js');
});
