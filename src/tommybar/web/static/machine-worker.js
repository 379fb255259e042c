// Keeps the page of one build at the machine in this browser, so that it can be loaded anew while the PC is away.
// It keeps that page and the page's own scripts, style and fonts; whatever else is asked for goes by untouched.

const HERE = new URL(self.registration.scope).pathname;
const OURS = `tommybar ${HERE} `;
const STORE = OURS + KEPT.mark;
const PATIENCE = 5000; // for an answer of the server before the kept page is shown [ms]

self.addEventListener("install", (event) => {
  event.waitUntil((async () => {
    const store = await caches.open(STORE);
    await store.addAll(KEPT.files);
    await fetched(store, new Request(HERE, { cache: "no-store", credentials: "same-origin" }));
    await self.skipWaiting();
  })());
});

self.addEventListener("activate", (event) => {
  event.waitUntil((async () => {
    for (const name of await caches.keys()) if (name.startsWith(OURS) && name !== STORE) await caches.delete(name);
    await self.clients.claim();
  })());
});

// The page from the server, laid aside when it is the page; put away when we are no longer let in.
async function fetched(store, request) {
  const answer = await fetch(request);
  if (answer.ok && !answer.redirected && answer.headers.has("x-plan")) await store.put(HERE, answer.clone());
  else if (answer.type === "opaqueredirect" || answer.redirected || [400, 403, 404].includes(answer.status)) await store.delete(HERE);
  return answer;
}

async function page(event) {
  const store = await caches.open(STORE);
  const fresh = fetched(store, event.request);
  const kept = await store.match(HERE);
  if (!kept) return fresh;
  event.waitUntil(fresh.catch(() => null));
  const late = new Promise((done) => setTimeout(() => done(kept), PATIENCE));
  return Promise.race([fresh, late]).catch(() => kept);
}

async function file(request) {
  const store = await caches.open(STORE);
  return (await store.match(request)) || fetch(request);
}

self.addEventListener("fetch", (event) => {
  const url = new URL(event.request.url);
  if (event.request.method !== "GET" || url.origin !== self.location.origin) return;
  if (url.pathname === HERE) event.respondWith(page(event));
  else if (KEPT.files.includes(url.pathname + url.search)) event.respondWith(file(event.request));
});
