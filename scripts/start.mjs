import { build, checkNode, install, serve } from './lib/project.mjs';

// `npm start`: installs and builds what is missing or stale, then serves.
checkNode();
install();
build();
serve(process.argv.slice(2));
