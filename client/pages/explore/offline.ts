/** All that the page may need later is fetched with it, and kept for a reload without a network where that is allowed. */
export async function stayOffline(): Promise<void> {
  // A face comes when its first letter is drawn, and for ♭ that may be after the network has gone.
  await Promise.allSettled([...document.fonts].map((face) => face.load()));
  // Only at HTTPS and localhost. Elsewhere the page works on until it is closed.
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return;
  try {
    await navigator.serviceWorker.register('/explore-worker.js', { scope: '/explore' });
  } catch {
    // Refused by the browser's settings: the same as at a plain address.
  }
}
