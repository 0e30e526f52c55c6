import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { build, checkNode, install, root } from './lib/project.mjs';

// `npm run dev`: compiles both sides as they change; the server restarts, and the pages reload themselves by the
// build's id the next time they connect.
checkNode();
install();
build();
const watchers = [
  ['node_modules/typescript/bin/tsc', '-b', 'shared', 'server', '--watch', '--preserveWatchOutput'],
  ['node_modules/vite/bin/vite.js', 'build', '--watch', '--logLevel', 'warn'],
  ['--watch', 'dist/server/main.js', ...process.argv.slice(2)],
].map((args) => spawn(process.execPath, args, { cwd: join(root), stdio: 'inherit' }));
for (const signal of ['SIGINT', 'SIGTERM']) {
  process.on(signal, () => {
    for (const watcher of watchers) watcher.kill(signal);
    process.exit(0);
  });
}
