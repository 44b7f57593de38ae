// Keeps the pages of the check sheet on the device, so that they open without signal. It keeps pages and program files
// only; answers and photos lie in the page's own store. Nothing but standard service-worker calls.
const shell = "sheet-shell-2";
const fallback = "There is no signal, and this page has not been opened on this device before.";

self.addEventListener("install", () => self.skipWaiting());
self.addEventListener("activate", (event) => {
  event.waitUntil(
    caches
      .keys()
      .then((names) =>
        Promise.all(
          names.filter((name) => name.startsWith("sheet-shell-") && name !== shell).map((name) => caches.delete(name)),
        ),
      )
      .then(() => self.clients.claim()),
  );
});

// The page names what it was made of when it first came, and what is to be forgotten when its job is closed.
self.addEventListener("message", (event) => {
  const { keep = [], forget = [], renew = [] } = event.data ?? {};
  event.waitUntil(
    caches.open(shell).then(async (cache) => {
      for (const address of forget) await cache.delete(address, { ignoreSearch: true });
      for (const address of renew) await fetchAndKeep(cache, address).catch(() => {}); // the one that is kept stays
      event.ports[0]?.postMessage("done");
      const kept = await Promise.all(keep.map((address) => keepOne(cache, address)));
      if (keep.length > 0) event.source?.postMessage({ keptAll: kept.every(Boolean) });
    }),
  );
});

self.addEventListener("fetch", (event) => {
  const { request } = event;
  const address = new URL(request.url);
  if (request.method !== "GET" || address.origin !== self.location.origin || address.searchParams.has("_rsc")) return;
  const isPage = request.mode === "navigate";
  const isProgram = address.pathname.startsWith("/_next/") || /\.(woff2?|svg|css|js)$/.test(address.pathname);
  if (!isPage && !isProgram) return;
  event.respondWith(isNamedByContent(address) ? fromDeviceFirst(request) : fromServerFirst(request, isPage));
});

/** A file whose name holds a hash never changes. */
function isNamedByContent({ pathname }) {
  return pathname.startsWith("/_next/static/") && /[.\-/_][0-9a-zA-Z_~-]{16,}\.\w+$/.test(pathname);
}

async function fromDeviceFirst(request) {
  const cache = await caches.open(shell);
  return (await cache.match(request)) ?? (await fetchAndKeep(cache, request));
}

async function fromServerFirst(request, isPage) {
  const cache = await caches.open(shell);
  try {
    return await fetchAndKeep(cache, request);
  } catch {
    const kept = await cache.match(request, { ignoreSearch: isPage });
    return kept ?? new Response(fallback, { status: 503, headers: { "Content-Type": "text/plain; charset=utf-8" } });
  }
}

async function fetchAndKeep(cache, request) {
  const response = await fetch(request);
  if (mayStay(response)) await cache.put(request, response.clone());
  return response;
}

/** Data never stays: they may name the customer. */
function mayStay(response) {
  const isData = /^application\/json/.test(response.headers.get("content-type") ?? "");
  return response.ok && response.type === "basic" && !response.redirected && !isData;
}

/** Whether it is on the device now. Without signal there is nothing to keep; the next visit with signal does it. */
async function keepOne(cache, address) {
  try {
    if (await cache.match(address)) return true;
    const response = await fetch(address, { credentials: "same-origin" });
    if (mayStay(response)) await cache.put(address, response);
    return mayStay(response);
  } catch {
    return false;
  }
}
