import { spawn } from 'node:child_process';
import { createServer } from 'vite';
import { root } from './project.mjs';

const port = Number(process.env.PORT || 8080);

const pages = await createServer({
  configFile: `${root}/vite.config.ts`,
  appType: 'mpa',
  optimizeDeps: { entries: ['*.html'] },
  plugins: [{ name: 'rootcall-pages', configureServer: ({ middlewares }) => void middlewares.use(asServed) }],
  server: {
    host: process.env.HOST || '0.0.0.0',
    port,
    strictPort: true,
    proxy: Object.fromEntries(
      ['/api', '/healthz', '/socket.io'].map((path) => [
        path,
        { target: `http://127.0.0.1:${port + 1}`, ws: true },
      ]),
    ),
  },
});
await pages.listen();
pages.printUrls();

const behind = { ...process.env, HOST: '127.0.0.1', PORT: String(port + 1) };
behind.PUBLIC_URL ||= `http://localhost:${port}`;
const children = [
  ['node_modules/typescript/bin/tsc', '-b', 'shared', 'server', '--watch', '--preserveWatchOutput'],
  ['--watch', 'dist/server/main.js'],
].map((args) => spawn(process.execPath, args, { cwd: root, stdio: 'inherit', env: behind }));
for (const signal of ['SIGINT', 'SIGTERM']) {
  process.once(signal, () => {
    for (const child of children) child.kill(signal);
    void pages.close().finally(() => process.exit());
  });
}

/** Gives a path the page that the server gives it. */
function asServed(request, _response, next) {
  const [, page] = /^\/(join|desk|board|check|explore|sound)(?:[/?]|$)/.exec(request.url) ?? [];
  if (page) request.url = page === 'join' ? '/index.html' : `/${page}.html`;
  next();
}
