// Every page in both themes, wide and on a phone: nothing serious by axe, no sideways scroll, no console error, and the keyboard.
import { type BrowserContext, expect, type Page, type Response, test } from "@playwright/test";
import { freeJob } from "./free-jobs";
import { readPdf } from "./read-pdf";
import { isReadableAtEveryWidth, wide } from "./readable";

interface Route {
  readonly name: string;
  /** Address, or what to find it by. */
  readonly at: string | ((found: Found) => string);
  readonly status?: number;
}

interface Found {
  readonly unit: string;
  readonly packet: string;
}

const routes: readonly Route[] = [
  { name: "today", at: "/today" },
  { name: "jobs", at: "/jobs" },
  { name: "a job", at: "/jobs/J-10004" },
  { name: "units", at: "/units" },
  { name: "a unit", at: ({ unit }) => unit },
  { name: "repeats", at: "/repeats" },
  { name: "a component", at: "/repeats/drain_pump" },
  { name: "claims", at: "/claims" },
  { name: "a job to claim", at: "/claims/for/J-10004" },
  { name: "a claim", at: ({ packet }) => packet.replace(/\/packet$/, "") },
  { name: "a packet", at: ({ packet }) => packet },
  { name: "parts", at: "/parts" },
  { name: "files", at: "/files" },
  { name: "a new file", at: "/files/new" },
  { name: "columns of files", at: "/files/columns" },
  { name: "a load", at: "/files/3" },
  { name: "rows held back", at: "/files/3/held" },
  { name: "sending jobs", at: "/files/sending" },
  { name: "keys", at: "/files/keys" },
  { name: "shop", at: "/shop" },
  { name: "coverage", at: "/shop/coverage" },
  { name: "a policy", at: "/shop/coverage/policy/brackenhall_household/2" },
  { name: "how we count", at: "/shop/how-we-count" },
  { name: "how late jobs come in", at: "/shop/reporting-delay" },
  { name: "check sheets", at: "/shop/sheets" },
  { name: "a check sheet", at: "/shop/sheets/front_load_washer/drain_pump" },
  { name: "open jobs", at: "/sheet" },
  { name: "opening a job", at: "/sheet/open" },
  { name: "a sheet on a phone", at: "/sheet/job/S-101" },
  { name: "a symptom", at: "/symptoms/will_not_drain?type=front_load_washer" },
  { name: "people", at: "/shop/people" },
  { name: "erasing and keeping", at: "/shop/keeping" },
  { name: "your account", at: "/account" },
  { name: "a second factor", at: "/account/second-factor" },
  { name: "no such page", at: "/no-such-page", status: 404 },
];

test.describe("every page", () => {
  let context: BrowserContext;
  let page: Page;
  let found: Found;
  const errors: string[] = [];
  test.beforeAll(async ({ browser }) => {
    context = await browser.newContext();
    page = await context.newPage();
    page.on("console", (message) => message.type() === "error" && errors.push(message.text()));
    page.on("pageerror", (error) => errors.push(error.message));
    found = await findAddresses(page);
  });
  test.afterAll(async () => {
    await context.close();
  });

  for (const { name, at, status = 200 } of routes) {
    test(name, async ({ baseURL }) => {
      errors.length = 0;
      const address = typeof at === "string" ? at : at(found);
      await context.addCookies([{ name: "theme", value: "light", url: baseURL ?? "" }]);
      const answer = await page.goto(address);
      expect(answer?.status()).toBe(status);
      await runsItsOwnScriptsOnly(answer);
      await skipLinkReachesMain(page);
      await isReadableAtEveryWidth(page);
      // The browser itself reports the answer 404 of the address that we asked for.
      expect(errors.filter((text) => status === 200 || !/status of 404/.test(text))).toEqual([]);
    });
  }

  test("a packet prints whole, in ink on white", async () => {
    await page.setViewportSize(wide);
    await page.goto(found.packet);
    const cells = await page
      .locator("main :is(td, th, h1, h2, dd)")
      .evaluateAll((all) => all.map((cell) => cell.textContent ?? ""));
    const sheets = await readPdf(await page.pdf({ format: "A4", preferCSSPageSize: true }));
    const printed = plain(sheets.map(({ text }) => text).join(" "));
    expect(cells.length).toBeGreaterThan(40);
    expect(cells.filter((cell) => !printed.includes(plain(cell)))).toEqual([]);
    expect(sheets.flatMap(({ cut }) => cut)).toEqual([]);
    expect(printed).not.toContain(plain("Skip to the page"));
  });

  test("a script that got into a page by whatever way does not run, and the page's own go on", async () => {
    const hostile = `<script>window.ran = "element"</script><img src="/none" onerror="window.ran = 'attribute'"><base href="/x/">`;
    await page.route("**/shop", async (route) => {
      const answer = await route.fetch();
      await route.fulfill({ response: answer, body: (await answer.text()).replace("<body>", `<body>${hostile}`) });
    });
    errors.length = 0;
    await page.goto("/shop", { waitUntil: "networkidle" });
    await page.unroute("**/shop");
    expect(await page.evaluate(() => [Reflect.get(window, "ran"), typeof Reflect.get(window, "next")])).toEqual([
      undefined,
      "object",
    ]);
    const refused = errors.filter((text) => /Content Security Policy/.test(text)).join("\n");
    for (const rule of ["inline script", "inline event handler", "base-uri"]) expect(refused).toContain(rule);
  });

  test("the chosen theme is what the server answers with", async ({ baseURL }) => {
    for (const theme of ["light", "dark"] as const) {
      await context.addCookies([{ name: "theme", value: theme, url: baseURL ?? "" }]);
      await page.goto("/today");
      expect(await page.locator("html").getAttribute("data-theme")).toBe(theme);
    }
  });
});

/** A unit of the list, and the packet of a claim that is kept as a draft here unless it is one already. */
async function findAddresses(page: Page): Promise<Found> {
  await page.goto("/jobs?words=J-10004");
  const unit = await page.locator('main a[href^="/units/"]').first().getAttribute("href");
  await page.goto("/claims");
  const drafts = page.locator('main a[href^="/claims/C-"]');
  if ((await drafts.count()) === 0) {
    await page.goto(`/claims/for/${await freeJob(page)}`);
    await page.getByRole("button", { name: "Keep as a draft claim" }).first().click();
    await page.waitForURL(/\/claims\/C-/);
  } else await page.goto((await drafts.first().getAttribute("href")) ?? "");
  const packet = await page.getByRole("link", { name: "Packet", exact: true }).getAttribute("href");
  if (unit === null || packet === null) throw new Error("no unit or no packet to look at");
  return { unit, packet };
}

/** Every script of the answer carries the answer's own nonce, which is the only reason for it to run. */
async function runsItsOwnScriptsOnly(answer: Response | null): Promise<void> {
  const policy = answer?.headers()["content-security-policy"] ?? "";
  const nonce = /script-src 'self' 'nonce-([^']+)' 'strict-dynamic';/.exec(policy)?.[1];
  expect(nonce).toBeDefined();
  const scripts = [...((await answer?.text()) ?? "").matchAll(/<script\b[^>]*>/g)].map(([tag]) => tag);
  expect(scripts.length).toBeGreaterThan(5);
  expect(scripts.filter((tag) => !tag.includes(`nonce="${nonce}"`))).toEqual([]);
}

async function skipLinkReachesMain(page: Page) {
  await page.keyboard.press("Tab");
  await expect(page.getByRole("link", { name: "Skip to the page" })).toBeFocused();
  await page.keyboard.press("Enter");
  await expect(page.locator("main#main")).toBeFocused();
}

function plain(text: string): string {
  return text.replaceAll(/\s+/g, "");
}
