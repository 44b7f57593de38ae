// Every page in both themes, wide and on a phone: nothing serious by axe, no sideways scroll, no console error, and the keyboard.
import AxeBuilder from "@axe-core/playwright";
import { type BrowserContext, expect, type Page, test } from "@playwright/test";
import { readPdf } from "./read-pdf";

const widths = [
  { width: 1280, height: 800 },
  { width: 390, height: 844 },
];

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
  { name: "no such page", at: "/no-such-page", status: 404 },
];

for (const theme of ["light", "dark"] as const) {
  test.describe(`every page, ${theme}`, () => {
    let context: BrowserContext;
    let page: Page;
    let found: Found;
    const errors: string[] = [];
    test.beforeAll(async ({ browser, baseURL }) => {
      context = await browser.newContext();
      await context.addCookies([{ name: "theme", value: theme, url: baseURL ?? "" }]);
      page = await context.newPage();
      page.on("console", (message) => message.type() === "error" && errors.push(message.text()));
      page.on("pageerror", (error) => errors.push(error.message));
      found = await findAddresses(page);
    });
    test.afterAll(async () => {
      await context.close();
    });

    for (const { name, at, status = 200 } of routes) {
      test(`${name}, ${theme}`, async () => {
        errors.length = 0;
        const address = typeof at === "string" ? at : at(found);
        await page.setViewportSize(widths[0] ?? { width: 1280, height: 800 });
        const answer = await page.goto(address);
        expect(answer?.status()).toBe(status);
        expect(await page.locator("html").getAttribute("data-theme")).toBe(theme);
        await skipLinkReachesMain(page);
        for (const size of widths) {
          await page.setViewportSize(size);
          // Dark differs from light in its colours only, which the width does not change: it is looked at once.
          if (theme === "light" || size === widths[0])
            expect(await seriousFindings(page), `${size.width} px wide`).toEqual([]);
          expect(await sidewaysScroll(page), `${size.width} px wide`).toBe(0);
        }
        // The browser itself reports the answer 404 of the address that we asked for.
        expect(errors.filter((text) => status === 200 || !/status of 404/.test(text))).toEqual([]);
      });
    }

    if (theme === "light") {
      test("a packet prints whole, in ink on white", async () => {
        await page.setViewportSize({ width: 1280, height: 800 });
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
    }
  });
}

/** A unit of the list, and the packet of a claim that is kept as a draft here unless it is one already. */
async function findAddresses(page: Page): Promise<Found> {
  await page.goto("/jobs?words=J-10004");
  const unit = await page.locator('main a[href^="/units/"]').first().getAttribute("href");
  await page.goto("/claims");
  const drafts = page.locator('main a[href^="/claims/C-"]');
  if ((await drafts.count()) === 0) {
    const jobs = await page
      .locator('main a[href^="/claims/for/"]')
      .evaluateAll((all) => all.map((link) => link.getAttribute("href") ?? ""));
    await page.goto(jobs.find((href) => !/\/J-100\d\d$/.test(href)) ?? "no job outside the ten can be claimed");
    await page.getByRole("button", { name: "Keep as a draft claim" }).first().click();
    await page.waitForURL(/\/claims\/C-/);
  } else await page.goto((await drafts.first().getAttribute("href")) ?? "");
  const packet = await page.getByRole("link", { name: "Packet", exact: true }).getAttribute("href");
  if (unit === null || packet === null) throw new Error("no unit or no packet to look at");
  return { unit, packet };
}

async function skipLinkReachesMain(page: Page) {
  await page.keyboard.press("Tab");
  await expect(page.getByRole("link", { name: "Skip to the page" })).toBeFocused();
  await page.keyboard.press("Enter");
  await expect(page.locator("main#main")).toBeFocused();
}

async function seriousFindings(page: Page): Promise<readonly string[]> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  return violations
    .filter(({ impact }) => impact === "serious" || impact === "critical")
    .map(
      ({ id, nodes }) =>
        `${id}: ${nodes
          .map(({ html }) => html.slice(0, 160))
          .slice(0, 3)
          .join(" | ")}`,
    );
}

/** Pixels by which the page itself can be moved sideways; tables move inside their own frames. */
async function sidewaysScroll(page: Page): Promise<number> {
  return page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
}

function plain(text: string): string {
  return text.replaceAll(/\s+/g, "");
}
