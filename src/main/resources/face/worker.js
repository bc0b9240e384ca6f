/* Lets a phone open pages that it saw before while the kitchen's computer cannot be reached. Only
   where a page is served over HTTPS do browsers run this. What is kept goes once the service asks
   for its access key again, and is never older than a day. */
const KEPT = "chillwright-pages";
const MOST = 40;
const DAY = 24 * 60 * 60 * 1000;
const PAGES = /^\/$|^\/day$|^\/on-hand$|^\/lots\/[^/]+$/;
const FACES = /\/kitchen\.(?:css|js)\?v=[0-9a-f]+/g;
const STORED = "X-Stored-At";

const forget = () => caches.delete(KEPT);

const store = async (address, text, type) => {
  const cache = await caches.open(KEPT);
  const headers = { "Content-Type": type, [STORED]: String(Date.now()) };
  await cache.delete(address);
  await cache.put(address, new Response(text, { headers }));
  const keys = await cache.keys();
  await Promise.all(keys.slice(0, Math.max(0, keys.length - MOST)).map((key) => cache.delete(key)));
};

// A page is kept with its style and its script, without which it could take no readings.
const keep = async (address, answer) => {
  const text = await answer.text();
  await store(address, text, answer.headers.get("Content-Type"));
  for (const face of new Set(text.match(FACES))) {
    const found = await fetch(face);
    if (found.ok) await store(face, await found.text(), found.headers.get("Content-Type"));
  }
};

// The clock of a page counts on from the moment it was made: that moment is moved along.
const moved = (text, by) =>
  text.replace(/data-now="([^"]+)"/, (all, made) => {
    const now = new Date(Date.parse(made) + by).toISOString();
    return `data-now="${now}" data-old="yes"`;
  });

const kept = async (address) => {
  const found = await (await caches.open(KEPT)).match(address);
  if (!found) return Response.error();
  const age = Date.now() - Number(found.headers.get(STORED));
  if (!(age >= 0 && age < DAY)) return Response.error();
  return new Response(moved(await found.text(), age), {
    headers: {
      "Content-Type": found.headers.get("Content-Type"),
      "Content-Security-Policy":
        "default-src 'none'; style-src 'self'; script-src 'self'; img-src 'self';" +
        " connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'",
    },
  });
};

const page = async (event, address) => {
  let answer;
  try {
    answer = await fetch(event.request);
  } catch (dead) {
    return kept(address);
  }
  // These pages lead elsewhere only where the access key has to be given again.
  const isShut = answer.type === "opaqueredirect" || answer.status === 401;
  if (isShut) event.waitUntil(forget());
  else if (answer.ok) event.waitUntil(keep(address, answer.clone()).catch(() => {}));
  return answer;
};

const face = async (request, address) => {
  try {
    return await fetch(request);
  } catch (dead) {
    return kept(address);
  }
};

self.addEventListener("install", () => self.skipWaiting());
self.addEventListener("activate", (event) => {
  const first = fetch("/", { redirect: "manual" }).then((found) => found.ok && keep("/", found));
  event.waitUntil(Promise.all([self.clients.claim(), first.catch(() => {})]));
});
self.addEventListener("fetch", (event) => {
  const { method, mode, url } = event.request;
  const { origin, pathname, search } = new URL(url);
  if (method !== "GET" || origin !== self.location.origin) return;
  const isFace = pathname.startsWith("/kitchen.");
  if (mode === "navigate" && PAGES.test(pathname)) event.respondWith(page(event, pathname));
  else if (isFace) event.respondWith(face(event.request, pathname + search));
});
