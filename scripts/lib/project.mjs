import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { delimiter, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Installing and building, each only where something is missing or stale. Only Node's own modules. */

export const root = fileURLToPath(new URL('../..', import.meta.url));
export const installStamp = join(root, 'node_modules/.rootcall-installed');
const buildStamp = join(root, 'dist/build.json');

/** What the build is made from. */
const sources = ['shared', 'server', 'client', 'package-lock.json', 'tsconfig.base.json', 'vite.config.ts'];
/** What must be there for a build to be whole. */
const products = [
  'server/main.js',
  'client/index.html',
  'client/desk.html',
  'client/board.html',
  'client/check.html',
  'client/explore.html',
  'client/charts.html',
  'client/sound.html',
];

/** Says what is wrong in one line and ends. */
export function giveUp(reason) {
  process.stderr.write(`${reason}\n`);
  process.exit(1);
}

/** Runs an installed tool in the foreground, by Node itself so that no shell is needed; true if it succeeded. */
export function tool(path, args, options = {}) {
  const file = join(root, 'node_modules', path);
  return (
    spawnSync(process.execPath, [file, ...args], { cwd: root, stdio: 'inherit', ...options }).status === 0
  );
}

/** What the installed packages must have been installed for. A native module fits one ABI of Node only. */
export function installId() {
  return `${hashOf(['package-lock.json'])} ${process.platform}-${process.arch}-${process.versions.modules}`;
}

/** `npm ci` where nothing is installed, or for another lock file or another kind of Node than the present ones. */
export function install() {
  if (existsSync(installStamp) && readFileSync(installStamp, 'utf8') === installId()) return;
  process.stdout.write('Installing what Rootcall is built from. The first time takes a minute or two.\n');
  const windows = process.platform === 'win32';
  const { error, status, stderr } = spawnSync(
    windows ? 'npm.cmd' : 'npm',
    // The build needs the development tools, also where NODE_ENV says production.
    ['ci', '--include=dev', '--no-fund', '--no-audit', '--loglevel=error'],
    {
      cwd: root,
      encoding: 'utf8',
      stdio: ['ignore', 'ignore', 'pipe'],
      maxBuffer: 2 ** 26,
      shell: windows,
    },
  );
  if (error || status === 127) giveUp('npm could not be started. It comes with Node: is it on the path?');
  if (status !== 0) giveUp(whyNotInstalled(stderr));
  writeFileSync(installStamp, installId());
}

/** One line where the cause is known; what npm said, and a line, where it isn't. */
function whyNotInstalled(complaint) {
  if (/gyp ERR/.test(complaint)) {
    const needed = { python3: ['python3', 'python'], make: ['make'], 'g++': ['g++', 'c++', 'clang++'] };
    const missing = Object.keys(needed).filter((name) => !onPath(needed[name]));
    if (missing.length > 0)
      return `The database driver has to be compiled here, and for that this machine lacks ${missing.join(', ')}.`;
    return `${complaint}The database driver could not be compiled with python3, make and g++. What is above says why.`;
  }
  if (/EACCES|EPERM|EROFS/.test(complaint)) return `npm may not write to ${root}.`;
  if (/ENOSPC/.test(complaint)) return 'The disk is full.';
  return `${complaint}npm could not install what Rootcall needs. Is the network there?`;
}

/** Where the first of these programs that there are lies. */
export function onPath(names) {
  const folders = (process.env['PATH'] ?? '').split(delimiter);
  return names
    .flatMap((name) => folders.map((folder) => join(folder, name)))
    .find((file) => existsSync(file));
}

/** Builds what is stale; ends with one line where that fails. */
export function build() {
  if (!tryBuild()) giveUp('Rootcall could not be built. What is above says why.');
}

/** The same, and true if the build is up to date afterwards. Its id is a digest of its sources. */
export function tryBuild() {
  const id = hashOf(sources).slice(0, 12);
  const isWhole = products.every((product) => existsSync(join(root, 'dist', product)));
  if (isWhole && readBuild() === id) return true;
  process.stdout.write('Building Rootcall.\n');
  // A build that breaks off must not pass for the one before it.
  rmSync(buildStamp, { force: true });
  const env = { ...process.env, NODE_ENV: 'production', VITE_BUILD: id };
  const built =
    // tsc trusts its own notes on what it wrote; where files are gone, it has to write them all.
    tool('typescript/bin/tsc', ['-b', 'shared', 'server', ...(isWhole ? [] : ['--force'])]) &&
    tool('vite/bin/vite.js', ['build', '--logLevel', 'warn'], { env });
  if (built) writeFileSync(buildStamp, `${JSON.stringify({ build: id })}\n`);
  return built;
}

function readBuild() {
  try {
    return JSON.parse(readFileSync(buildStamp, 'utf8')).build;
  } catch {
    return undefined;
  }
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
