// `npm run dev`: the pages come from Vite on PORT and change in the open browser; the server runs behind it on the
// next port and restarts. Both reload as soon as a file is saved.
import './lib/check-node.mjs';

import('./lib/project.mjs').then(({ build, install }) => {
  install();
  build();
  return import('./lib/develop.mjs');
});
