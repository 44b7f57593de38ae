import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";

// What the check sheet asks of a browser. Each call below is in Chromium, Firefox and Safari alike (from memory of the
// public tables of browser support; walked in Chromium by the browser tests, and once by hand in Firefox ESR 153). A call
// that is not listed fails here, so that whoever brings it looks it up first.
const known: readonly string[] = [
  ...words(
    "URL.createObjectURL URL.revokeObjectURL Blob FormData URL AbortController Response fetch setInterval setTimeout",
  ),
  ...words("caches.open caches.delete caches.keys crypto.getRandomValues createImageBitmap indexedDB.open"),
  ...words(
    "document.addEventListener document.removeEventListener document.createElement document.querySelector document.getElementById",
  ),
  ...words("document.visibilityState location.href location.origin performance.getEntriesByType"),
  ...words("navigator.onLine navigator.serviceWorker navigator.storage window.scrollTo"),
  ...words("window.addEventListener window.removeEventListener"),
  ...words("self.addEventListener self.clients self.location self.skipWaiting"),
];

const root = join(__dirname, "../..");
const files = [
  ...["app/sheet/_device", "app/sheet/_flow"].flatMap((folder) =>
    readdirSync(join(root, folder)).map((name) => `${folder}/${name}`),
  ),
  "public/sheet-worker.js",
].filter((file) => /\.(ts|tsx|js)$/.test(file));

const roots = "navigator|window|document|indexedDB|crypto|caches|self|performance|URL|location";
const makers =
  "AbortController|AbortSignal|Blob|BroadcastChannel|File|FileReader|FormData|ImageCapture|Notification|Request|Response|URL|Worker";
const loose =
  "fetch|setInterval|setTimeout|createImageBitmap|structuredClone|requestIdleCallback|requestAnimationFrame|queueMicrotask";

/** Calls of the browser in a text, its comments and words left out. */
function browserCalls(text: string): readonly string[] {
  const code = text.replaceAll(/\/\*[\s\S]*?\*\/|(?<!:)\/\/.*|"(?:[^"\\\n]|\\.)*"/g, "");
  return [
    ...[...code.matchAll(new RegExp(`(?<![\\w.])(${roots})\\s*\\??\\.\\s*(\\w+)`, "g"))].map(
      ([, of, name]) => `${of}.${name}`,
    ),
    ...[...code.matchAll(new RegExp(`\\bnew (${makers})\\b`, "g"))].map(([, name = ""]) => name),
    ...[...code.matchAll(new RegExp(`(?<![\\w.])(${loose})\\(`, "g"))].map(([, name = ""]) => name),
  ];
}

test.each(files)("%s asks nothing of a browser that only some of them have", (file) => {
  expect(browserCalls(readFileSync(join(root, file), "utf8")).filter((call) => !known.includes(call))).toEqual([]);
});

test("the list holds nothing that nobody calls, and a call that one browser alone has would be seen", () => {
  const used = new Set(files.flatMap((file) => browserCalls(readFileSync(join(root, file), "utf8"))));
  expect(known.filter((call) => !used.has(call))).toEqual([]);
  expect(browserCalls("await registration.sync.register(); navigator.getBattery(); new ImageCapture(track)")).toEqual([
    "navigator.getBattery",
    "ImageCapture",
  ]);
});

test("no sending in the background is counted on, which Firefox and Safari do not have", () => {
  for (const file of files)
    expect(readFileSync(join(root, file), "utf8"), file).not.toMatch(
      /\.sync\b|periodicSync|backgroundFetch|showOpenFilePicker|navigator\.usb|navigator\.bluetooth/,
    );
});

function words(text: string): readonly string[] {
  return text.split(" ");
}
