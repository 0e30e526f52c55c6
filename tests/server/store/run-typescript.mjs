import process from 'node:process';
import { runnerImport } from 'vite';

// Started as `node run-typescript.mjs FILE …`, it gives FILE the arguments that it would have had by itself.
process.argv.splice(1, 1);
await runnerImport(process.argv[1], { logLevel: 'error' });
