/*
 * Keeps the page for exploring, whole and of one build, so that it loads without a network. The build writes its own
 * name and the list of files in here; a new build is another text, and so another worker.
 */
const cacheName = 'rootcall-explore-%BUILD%';
const files = ['%FILES%'];

self.addEventListener('install', (event) => {
  self.skipWaiting();
  event.waitUntil(caches.open(cacheName).then((cache) => cache.addAll(files)));
});

self.addEventListener('activate', (event) => {
  const isOld = (name) => name.startsWith('rootcall-explore-') && name !== cacheName;
  event.waitUntil(
    caches.keys().then((names) => Promise.all(names.filter(isOld).map((name) => caches.delete(name)))),
  );
});

self.addEventListener('fetch', (event) => {
  const { pathname } = new URL(event.request.url);
  const file = event.request.mode === 'navigate' ? '/explore' : pathname;
  if (event.request.method !== 'GET' || !files.includes(file)) return;
  event.respondWith(
    caches
      .open(cacheName)
      .then((cache) => cache.match(file, { ignoreVary: true }))
      .then((kept) => kept ?? fetch(event.request)),
  );
});
