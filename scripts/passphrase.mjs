import { build, checkNode, giveUp, install, run } from './lib/project.mjs';

// `npm run passphrase`: gives a teacher a new passphrase.
checkNode();
install();
build();
if (!run(process.execPath, ['dist/server/passphrase.js', ...process.argv.slice(2)]))
  giveUp('The passphrase was not changed.');
