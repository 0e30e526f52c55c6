import { defineConfig } from 'vite';

/** Pages are separate documents, so that a phone on the Stand never loads the Desk. */
export default defineConfig({
  root: 'client',
  build: {
    outDir: '../dist/client',
    emptyOutDir: true,
    assetsInlineLimit: 0,
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
