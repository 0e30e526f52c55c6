import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { brotliCompressSync, constants, gzipSync } from 'node:zlib';
import { build, defineConfig, type BuildOptions, type Plugin } from 'vite';

const output: BuildOptions = { outDir: '../dist/client', assetsInlineLimit: 0 };
/** Listening's worker and its part in the audio thread: files of their own, loaded when they are wanted. */
const worker = { format: 'es' } as const;

/** Pages are separate documents, so that a phone on the Stand never loads the Desk. */
export default defineConfig({
  root: 'client',
  plugins: [
    head(),
    compressed(),
    pageAlone('explore', exploreWorker),
    pageAlone('charts'),
    pageAlone('sound'),
  ],
  worker,
  build: {
    ...output,
    emptyOutDir: true,
    rolldownOptions: {
      input: {
        stand: 'client/index.html',
        desk: 'client/desk.html',
        board: 'client/board.html',
        check: 'client/check.html',
      },
    },
  },
});

/** What the head of every document holds stands once, in head.html. */
function head(): Plugin {
  return {
    name: 'rootcall-head',
    transformIndexHtml: {
      order: 'pre',
      handler: (page) => page.replace('<!-- head.html -->', readFileSync('client/head.html', 'utf8')),
    },
  };
}

/** Lays each script, style and table of weights compressed beside itself, once; the server only hands it out. */
function compressed(): Plugin {
  return {
    name: 'rootcall-compressed',
    apply: 'build',
    writeBundle({ dir = '' }, bundle) {
      for (const name of Object.keys(bundle).filter((file) => /\.(js|css|bin)$/.test(file))) {
        const file = join(dir, name);
        const plain = readFileSync(file);
        writeFileSync(
          `${file}.br`,
          brotliCompressSync(plain, { params: { [constants.BROTLI_PARAM_QUALITY]: 9 } }),
        );
        writeFileSync(`${file}.gz`, gzipSync(plain, { level: 9 }));
      }
    },
  };
}

/**
 * Such a page is built by itself, after the others: what it shares with the Stand would otherwise be cut out of the
 * Stand's scripts, which then weigh more.
 */
function pageAlone(name: string, plugin?: () => Plugin): Plugin {
  return {
    name: `rootcall-${name}-page`,
    apply: 'build',
    async closeBundle() {
      await build({
        configFile: false,
        root: 'client',
        logLevel: 'warn',
        plugins: [head(), compressed(), plugin?.()],
        worker,
        build: {
          ...output,
          emptyOutDir: false,
          rolldownOptions: { input: { [name]: `client/${name}.html` } },
        },
      });
    },
  };
}

/** Writes into the worker of the page for exploring which files that page is made of. */
function exploreWorker(): Plugin {
  return {
    name: 'rootcall-explore-worker',
    apply: 'build',
    writeBundle({ dir = '' }, bundle) {
      const page = readFileSync(join(dir, 'explore.html'), 'utf8');
      const fonts = Object.keys(bundle).filter((file) => /\.(woff2|otf)$/.test(file));
      const files = [
        '/explore',
        ...[...page.matchAll(/(?:src|href)="(\/[^"]+)"/g)].map(([, file = '']) => file),
        ...fonts.map((file) => `/${file}`),
      ];
      const worker = readFileSync('client/pages/explore/worker.js', 'utf8')
        .replace('%BUILD%', createHash('sha256').update(page).digest('hex').slice(0, 12))
        .replace('%FILES%', files.join("', '"));
      writeFileSync(join(dir, 'explore-worker.js'), worker);
    },
  };
}
