// Keeps tonight's sheet and what is needed at the traps on it, so that they open without reception.
// A page is fetched anew whenever that works; what was kept answers only when it does not.
const KEPT_PAGES = 'pages-1';
const KEPT_PARTS = 'parts-1';
const PATIENCE_MILLIS = 5000;

self.addEventListener('install', (event) => {
  event.waitUntil(self.skipWaiting());
});

self.addEventListener('activate', (event) => {
  event.waitUntil((async () => {
    const names = await caches.keys();
    await Promise.all(names.filter((name) => name !== KEPT_PAGES && name !== KEPT_PARTS).map((name) => caches.delete(name)));
    await self.clients.claim();
  })());
});

const isPart = (url) => url.pathname.startsWith('/assets/') || url.pathname.startsWith('/webjars/')
  || url.pathname === '/manifest.webmanifest';
const isPage = (request, url) => request.mode === 'navigate' && !url.pathname.startsWith('/api/')
  && !url.pathname.startsWith('/feeds/');

self.addEventListener('fetch', (event) => {
  const url = new URL(event.request.url);
  if (event.request.method !== 'GET' || url.origin !== self.location.origin) return;
  if (isPart(url)) event.respondWith(part(event));
  else if (isPage(event.request, url)) event.respondWith(page(event.request));
});

// Parts change with the program only: what is kept answers at once and is renewed behind it.
async function part(event) {
  const kept = await caches.open(KEPT_PARTS);
  const known = await kept.match(event.request);
  const fresh = fetch(event.request).then((response) => {
    if (response.ok) kept.put(event.request, response.clone());
    return response;
  });
  if (!known) return fresh;
  event.waitUntil(fresh.catch(() => known));
  return known;
}

async function page(request) {
  const kept = await caches.open(KEPT_PAGES);
  try {
    const response = await inTime(fetch(request));
    await remember(kept, request.url, response);
    return response;
  } catch (noReception) {
    const known = await kept.match(request.url, { ignoreSearch: false })
      || await kept.match(request.url, { ignoreSearch: true });
    if (known) return known;
    const sheet = await kept.match(new URL('/', self.location.origin).href);
    if (sheet) return Response.redirect('/', 302);
    throw noReception;
  }
}

// Whoever is signed out keeps nothing on the phone.
async function remember(kept, address, response) {
  if (response.redirected || new URL(response.url || address).pathname === '/sign-in') {
    if (new URL(response.url).pathname === '/sign-in') await caches.delete(KEPT_PAGES);
    return;
  }
  const noStore = (response.headers.get('Cache-Control') || '').includes('no-store');
  if (response.ok && !noStore && response.type === 'basic') await kept.put(address, response.clone());
}

function inTime(fetching) {
  return Promise.race([fetching, new Promise((resolve, reject) => {
    setTimeout(() => reject(new Error('no answer in time')), PATIENCE_MILLIS);
  })]);
}

// The sheet names what belongs to it; all of that is fetched while there is reception.
self.addEventListener('message', (event) => {
  if (!event.data || !Array.isArray(event.data.keep)) return;
  event.waitUntil((async () => {
    const pages = await caches.open(KEPT_PAGES);
    const parts = await caches.open(KEPT_PARTS);
    for (const address of event.data.keep) {
      const url = new URL(address, self.location.origin);
      if (url.origin !== self.location.origin) continue;
      try {
        const response = await fetch(url.href, { credentials: 'same-origin' });
        if (isPart(url)) {
          if (response.ok) await parts.put(url.href, response);
        } else {
          await remember(pages, url.href, response);
        }
      } catch (noReception) {
        return;
      }
    }
    if (event.source) event.source.postMessage({ kept: true });
  })());
});
