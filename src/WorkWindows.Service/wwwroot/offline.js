"use strict";

// Keeps checklists and briefing sheets that were opened once, so that they can be read where there is no network.
const kept = "ww-pages";
const patienceMs = 4000;
const mostPages = 40;
const page = /^\/tasks\/[^/]+\/(checklist|briefing)$/;
const asset = /\.(css|js|svg)$/;

self.addEventListener("install", event => event.waitUntil(self.skipWaiting()));
self.addEventListener("activate", event => event.waitUntil(self.clients.claim()));

self.addEventListener("fetch", event => {
  const { method, url } = event.request;
  const { origin, pathname } = new URL(url);
  if (origin !== self.location.origin)
    return;
  // Whoever signs in next must not be shown the pages of somebody else.
  if (pathname === "/sign-out" || pathname === "/sign-in")
    event.waitUntil(caches.delete(kept));
  else if (method === "GET" && (page.test(pathname) || asset.test(pathname)))
    event.respondWith(answer(event.request));
});

// What the network says, or what was kept where it says nothing or takes too long.
async function answer(request) {
  const cache = await caches.open(kept);
  const held = await cache.match(request);
  const fresh = fetch(request).then(async response => {
    if (response.ok && !response.redirected) {
      await cache.put(request, response.clone());
      await forgetOldest(cache);
    }
    return response;
  });
  if (!held)
    return fresh;
  const late = new Promise(done => setTimeout(done, patienceMs, held));
  return Promise.race([fresh.catch(() => held), late]);
}

async function forgetOldest(cache) {
  const pages = (await cache.keys()).filter(request => page.test(new URL(request.url).pathname));
  await Promise.all(pages.slice(0, -mostPages).map(request => cache.delete(request)));
}
