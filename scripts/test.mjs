// `npm test`: the whole of the checking.
import './lib/check-node.mjs';

import('./lib/check-all.mjs');
