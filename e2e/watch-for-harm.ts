import { type BrowserContext, expect, type Page } from "@playwright/test";
import { pageActs } from "../app/_people/route-acts";
import { hostile, type Place } from "./hostile-words";

export type PageKind = keyof typeof pageActs;

/** A page, and what notes how words stand on it now; that fails where one of them did anything. */
export interface Walk {
  readonly page: Page;
  readonly look: () => Promise<void>;
}

export interface Watched {
  readonly newWalk: () => Promise<Walk>;
  /** Whose words stood as they were written on each kind of page, and in its charts. */
  readonly seen: ReadonlyMap<PageKind | "charts", ReadonlySet<Place>>;
}

/**
 * From now on pages of the context note what happens in them. They fetch nothing ahead of a click, which is half of their work
 * and shows nothing.
 */
export async function watchForHarm(context: BrowserContext): Promise<Watched> {
  await context.addInitScript(noteWhatHappens);
  const seen = new Map<PageKind | "charts", Set<Place>>();
  const note = (kind: PageKind | "charts", places: readonly Place[]) =>
    seen.set(kind, new Set([...(seen.get(kind) ?? []), ...places]));
  const newWalk = async (): Promise<Walk> => {
    const page = await context.newPage();
    page.setDefaultTimeout(60_000);
    const heard = listenTo(page);
    const look = async () => {
      const { told, texts, charts } = await page.evaluate(lookAround);
      expect([...heard.splice(0), ...told], page.url()).toEqual([]);
      note(kindOf(page.url()), placesIn(texts));
      note("charts", placesIn(charts));
    };
    return { page, look };
  };
  return { newWalk, seen };
}

function listenTo(page: Page): string[] {
  const heard: string[] = [];
  page.on("dialog", (dialog) => {
    heard.push(`a dialog opened: ${dialog.message()}`);
    void dialog.dismiss();
  });
  page.on("popup", (popup) => heard.push(`a window opened: ${popup.url()}`));
  page.on("pageerror", ({ message }) => heard.push(`a script failed: ${message}`));
  page.on("console", (message) => {
    if (message.type() === "error") heard.push(`the browser complains: ${message.text()}`);
  });
  return heard;
}

function placesIn(text: string): readonly Place[] {
  const all = Object.entries(hostile) as [Place, string][]; // Object.entries loses the key type
  return all.flatMap(([place, words]) => (text.includes(words) ? [place] : []));
}

const kinds = (Object.keys(pageActs) as PageKind[]) // Object.keys loses the key type
  .toSorted((a, b) => a.split("[").length - b.split("[").length)
  .map((kind) => ({ kind, pattern: new RegExp(`^${kind.replaceAll(/\[\w+\]/g, "[^/]+")}$`) }));

/** The kind of page that stands at an address; one without brackets goes before one with. */
function kindOf(address: string): PageKind {
  const { pathname } = new URL(address);
  const found = kinds.find(({ pattern }) => pattern.test(pathname));
  if (found === undefined) throw new Error(`no page stands at ${pathname}`);
  return found.kind;
}

/** Runs in the page before anything else. */
function noteWhatHappens(): void {
  const told: string[] = [];
  Object.assign(window, { told, planted: () => told.push("a script of theirs ran") });
  IntersectionObserver.prototype.observe = () => {};
  document.addEventListener("securitypolicyviolation", ({ effectiveDirective, blockedURI }) =>
    told.push(`the policy refused ${effectiveDirective} ${blockedURI}`),
  );
}

/** Runs in the page; asked of the browser as a whole, since some pages have thousands of elements. */
function lookAround() {
  const told: string[] = [...(Reflect.get(window, "told") ?? ["nothing was noted"])];
  for (const element of document.querySelectorAll("[data-planted], img[src='x']"))
    told.push(`theirs became an element: ${element.outerHTML.slice(0, 200)}`);
  const risky = document.evaluate(
    "//@*[starts-with(name(), 'on') or contains(translate(., 'JAVSCRIPT', 'javscript'), 'javascript:')]",
    document,
    null,
    XPathResult.ORDERED_NODE_SNAPSHOT_TYPE,
  );
  for (let n = 0; n < risky.snapshotLength; n += 1) {
    const { nodeName, nodeValue } = risky.snapshotItem(n) as Attr; // what the path asks for
    // React's own, in forms that it sends itself.
    if (!nodeValue?.startsWith("javascript:throw new Error('A React form was unexpectedly submitted."))
      told.push(`an attribute that runs: ${nodeName}="${nodeValue?.slice(0, 100)}"`);
  }
  const read = ["title", "aria-label", "alt", "placeholder"];
  const texts = [...document.querySelectorAll(read.map((name) => `[${name}]`).join())].flatMap((element) =>
    read.map((name) => element.getAttribute(name) ?? ""),
  );
  for (const field of document.querySelectorAll<HTMLInputElement>("input, textarea")) texts.push(field.value);
  texts.push(document.title, document.body.textContent ?? "");
  const charts = [...document.querySelectorAll("svg, [role=application]")].map((chart) => chart.textContent ?? "");
  return { told, texts: texts.join("\n"), charts: charts.join("\n") };
}
