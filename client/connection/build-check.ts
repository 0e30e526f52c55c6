const own: string = import.meta.env.VITE_BUILD ?? 'dev';
const reloadedFor = 'rootcall.reloaded-for';

/**
 * Reloads a page that is older than the server, once for each of the server's builds: a cache in between that
 * hands out the old page again must not make it reload for ever. What the student placed waits in the outbox.
 */
export function checkBuild(served: string): void {
  if (served === own || served === 'dev' || own === 'dev') return;
  try {
    if (sessionStorage.getItem(reloadedFor) === served) return;
    sessionStorage.setItem(reloadedFor, served);
  } catch {
    return;
  }
  location.reload();
}
