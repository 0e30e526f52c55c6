import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { rm } from 'node:fs/promises';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { giveUp, root } from '../project.mjs';

/** Longer than the server itself takes to stop. Milliseconds. */
const stopWithin = 4800;

/** The production server on a store made anew; its addresses, its set-up token, and how to stop it. */
export async function startServer() {
  const port = Number(process.env['PORT'] || 8080);
  // Before the folder is emptied: another demo may be using it.
  await needFreePort(port);
  const dataDir = join(root, 'data/demo', String(port));
  await rm(dataDir, { recursive: true, force: true });
  const child = spawn(process.execPath, [join(root, 'dist/server/main.js')], {
    env: { ...process.env, PORT: String(port), DATA_DIR: dataDir, HTTPS: '0' },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const gone = once(child, 'exit');
  const stop = async () => {
    child.kill('SIGTERM');
    const late = setTimeout(() => child.kill('SIGKILL'), stopWithin);
    await gone;
    clearTimeout(late);
  };
  const addresses = [];
  let token = '';
  for await (const line of createInterface({ input: child.stdout })) {
    const found = /https?:\/\/\S+/.exec(line)?.[0];
    if (found?.includes('#')) token = new URL(found).hash.slice(1);
    else if (found) addresses.push(found);
    if (line.startsWith('Data folder:')) break;
  }
  child.stdout.resume();
  // It has said itself why it could not start.
  if (token === '') process.exit(1);
  return { url: `http://127.0.0.1:${port}`, addresses, token, dataDir, gone, stop };
}

async function needFreePort(port) {
  if (!Number.isInteger(port) || port < 1 || port > 65_535) giveUp('PORT takes a number from 1 to 65535.');
  const probe = createServer();
  probe.listen(port, process.env['HOST'] || '0.0.0.0');
  await once(probe, 'listening').catch(() =>
    giveUp(`Port ${port} can't be used. Choose another: PORT=8090 npm run demo`),
  );
  probe.close();
  await once(probe, 'close');
}
