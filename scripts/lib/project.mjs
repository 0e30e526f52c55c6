import { spawn, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Installing and building, each only where something is missing or stale. Only Node's own modules. */

export const root = fileURLToPath(new URL('../..', import.meta.url));
const installStamp = join(root, 'node_modules/.rootcall-installed');
const buildStamp = join(root, 'dist/build.json');

/** What the build is made from. */
const sources = ['shared', 'server', 'client', 'package-lock.json', 'tsconfig.base.json', 'vite.config.ts'];

/** Says what is wrong in one line and ends. */
export function giveUp(reason) {
  process.stderr.write(`${reason}\n`);
  process.exit(1);
}

/** Runs a tool of the project in the foreground; true if it succeeded. */
export function run(command, args, options = {}) {
  const { status } = spawnSync(command, args, { cwd: root, stdio: 'inherit', ...options });
  return status === 0;
}

/** Node itself with one of the installed tools, so that no shell is needed. */
export function tool(path, args, options = {}) {
  return run(process.execPath, [join(root, 'node_modules', path), ...args], options);
}

export function checkNode() {
  const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
  const fits = (major === 20 && minor >= 19) || (major === 22 && minor >= 12) || major > 22;
  if (!fits)
    giveUp(`Rootcall needs Node 20.19 or newer, or 22.12 or newer; this is ${process.versions.node}.`);
}

/** `npm ci` where nothing is installed, or another lock file than the present one was. */
export function install() {
  const lock = hashOf(['package-lock.json']);
  if (existsSync(installStamp) && readFileSync(installStamp, 'utf8') === lock) return;
  process.stdout.write('Installing what Rootcall is built from. The first time takes a minute or two.\n');
  const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm';
  const installed = spawnSync(npm, ['ci', '--no-fund', '--no-audit', '--loglevel=error'], {
    cwd: root,
    encoding: 'utf8',
    shell: process.platform === 'win32',
  });
  if (installed.error) giveUp('npm could not be started. It comes with Node; is it on the path?');
  if (installed.status !== 0) {
    process.stderr.write(installed.stderr);
    const compiling = /node-gyp|gyp ERR/.test(installed.stderr);
    giveUp(
      compiling
        ? 'The database driver could not be built. It needs python3, make and a C++ compiler (g++).'
        : 'npm could not install what Rootcall needs. Is the network there?',
    );
  }
  writeFileSync(installStamp, lock);
}

/** Compiles what is stale; the build's id is a digest of its sources. */
export function build() {
  const id = hashOf(sources).slice(0, 12);
  if (existsSync(buildStamp) && JSON.parse(readFileSync(buildStamp, 'utf8')).build === id) return;
  process.stdout.write('Building Rootcall.\n');
  const built =
    tool('typescript/bin/tsc', ['-b', 'shared', 'server']) &&
    tool('vite/bin/vite.js', ['build', '--logLevel', 'warn'], { env: { ...process.env, VITE_BUILD: id } });
  if (!built) giveUp('Rootcall could not be built. What is above says why.');
  mkdirSync(join(root, 'dist'), { recursive: true });
  writeFileSync(buildStamp, `${JSON.stringify({ build: id })}\n`);
}

/** Starts the built server in its own process, and passes signals and the exit code on. */
export function serve(args = [], env = process.env) {
  const server = spawn(process.execPath, [join(root, 'dist/server/main.js'), ...args], {
    cwd: root,
    stdio: 'inherit',
    env,
  });
  for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => server.kill(signal));
  server.on('exit', (code, signal) => process.exit(signal ? 1 : (code ?? 1)));
  return server;
}

function hashOf(paths) {
  const hash = createHash('sha256');
  for (const path of paths) addTo(hash, resolve(root, path), path);
  return hash.digest('hex');
}

function addTo(hash, file, name) {
  let entries;
  try {
    entries = readdirSync(file).sort();
  } catch {
    hash.update(`${name}\0`).update(readFileSync(file));
    return;
  }
  for (const entry of entries) addTo(hash, join(file, entry), `${name}/${entry}`);
}
