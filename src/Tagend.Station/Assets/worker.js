// Keeps the shell: what was last shown of each page opens also when the station does not answer, and says so itself by
// what it then cannot send. Nothing else is kept.
"use strict";
const shell = "tagend-shell-1";

self.addEventListener("install", () => self.skipWaiting());
self.addEventListener("activate", event => event.waitUntil(
    caches.keys()
        .then(names => Promise.all(names.filter(name => name !== shell).map(name => caches.delete(name))))
        .then(() => self.clients.claim())));

self.addEventListener("fetch", event => {
    const request = event.request;
    const isAsset = new URL(request.url).pathname.startsWith("/assets/");
    if (request.method !== "GET" || !(isAsset || request.mode === "navigate")) {
        return;
    }

    event.respondWith(fetch(request)
        .then(response => {
            if (response.ok) {
                const copy = response.clone();
                event.waitUntil(caches.open(shell).then(cache => cache.put(request, copy)));
            }

            return response;
        })
        .catch(() => caches.match(request).then(known => known ?? Response.error())));
});
