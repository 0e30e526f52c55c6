import { register } from 'node:module';
import process from 'node:process';

/**
 * Loaded into a server process by `--import`: the same server, with another way to keep answers. ROOTCALL_STORAGE is
 * `real`, `none` (answers are acknowledged and not kept) or `each` (every answer waits for a commit of its own).
 */
const way = process.env.ROOTCALL_STORAGE ?? 'real';

globalThis.rootcallStorage = (store) => {
  let last = Promise.resolve();
  const keep = {
    real: (id, changes) => store.classes.commit(id, changes),
    none: (id, changes) =>
      changes.every(({ kind }) => kind === 'answer')
        ? new Promise((resolve) => setImmediate(resolve))
        : store.classes.commit(id, changes),
    each: (id, changes) => {
      const own = last.then(() => store.classes.commit(id, changes));
      last = own.catch(() => undefined);
      return own;
    },
  }[way];
  const commit = async (id, changes) => {
    await keep(id, changes);
    if (globalThis.rootcallMarks && changes.some(({ kind }) => kind === 'round'))
      globalThis.rootcallMarks.durable = process.hrtime.bigint();
  };
  return { ...store, classes: { ...store.classes, commit } };
};

const loader = `
export async function load(url, context, next) {
  if (!url.endsWith('/store/sqlite/open-store.js')) return next(url, context);
  const source = \`
    import * as own from './open-store.js?own';
    export * from './open-store.js?own';
    export function openStore(...given) {
      const opened = own.openStore(...given);
      return opened instanceof Promise ? opened.then(rootcallStorage) : rootcallStorage(opened);
    }\`;
  return { format: 'module', source, shortCircuit: true };
}`;
register(`data:text/javascript,${encodeURIComponent(loader)}`);
