// Whatever people and files write is shown as it was written, on every page and in every file, and nothing of it runs.
import { type BrowserContext, expect, type Page, test } from "@playwright/test";
import { parse } from "csv-parse/sync";
import { pageActs } from "../app/_people/route-acts";
import { demoPassword } from "../lib/people/demo-people";
import { enterOfClaim } from "./hostile-claim";
import { forecastItsParts, loadHostileCompany } from "./hostile-company";
import { enterFile } from "./hostile-file";
import { documentsOut, inPacket, tablesOut } from "./hostile-files-out";
import { enterAtTheDesk, enterOfJob, enterOfParts } from "./hostile-forms";
import { enterOfKeeping, enterOfSheets, enterOfSignal, enterOfTerms } from "./hostile-house";
import { type Made, pagesToOpen, pagesWithoutWords, withEveryFilter } from "./hostile-pages";
import { notOpened, onNoPage, shownOn } from "./hostile-shown";
import { hostile, hostileAndShort, type Place, places } from "./hostile-words";
import { readPdf } from "./read-pdf";
import { type Walk, watchForHarm } from "./watch-for-harm";

test.describe.configure({ mode: "serial", timeout: 240_000 });

test.describe("words that would run", () => {
  let context: BrowserContext;
  let made: Made;
  test.beforeAll(async ({ browser }) => {
    context = await browser.newContext();
  });
  test.afterAll(async () => {
    await context.close();
  });

  test("stand on every page as they were loaded and typed, and do nothing", async () => {
    const { newWalk, seen } = await watchForHarm(context);
    await loadHostileCompany();
    const walks = [await newWalk(), await newWalk()] as const;
    const [atTheDesk, ofTheClaim] = await Promise.all([enterMost(walks[0]), enterOfItsClaim(walks[1])]);
    made = { ...atTheDesk, ...ofTheClaim };
    const left = [...pagesToOpen(made)];
    const openAll = async ({ page, look }: Walk) => {
      for (let at = left.shift(); at !== undefined; at = left.shift()) {
        expect((await page.goto(at))?.status(), at).toBe(200);
        await readChart(page);
        await look();
      }
    };
    await Promise.all(walks.map(openAll));

    const lacking = Object.entries(shownOn).flatMap(([kind, wanted]) =>
      wanted.filter((place) => !seen.get(kind as keyof typeof shownOn)?.has(place)).map((place) => `${kind}: ${place}`),
    );
    expect(lacking).toEqual([]);
    const kinds = Object.keys(pageActs) as (keyof typeof pageActs)[]; // Object.keys loses the key type
    const known = [...pagesWithoutWords, ...notOpened];
    expect(kinds.filter((kind) => !seen.has(kind) && !known.includes(kind))).toEqual([]);
    for (const page of pagesWithoutWords)
      expect(await (await context.request.get(page)).text(), page).not.toContain("data-planted");
    const shown = new Set([...seen.values()].flatMap((all) => [...all]));
    expect(places.filter((place) => !shown.has(place))).toEqual(onNoPage);
  });

  test("stand in files so that no spreadsheet runs them, and word for word in documents and packets", async () => {
    const runNothing = (text: string, holds: readonly Place[], at: string) => {
      const cells = (parse(text, { bom: true }) as string[][]).flat(); // without columns rows are lists
      expect(cells.filter(runsAsFormula), at).toEqual([]);
      const all = cells.join("\n");
      expect(
        holds.filter((place) => !all.includes(hostile[place])),
        at,
      ).toEqual([]);
    };
    runNothing(made.report, ["heading", "other heading", "cell", "word of a cell", "maker", "model"], "report");
    for (const { at, holds } of tablesOut(made)) {
      const answer = await context.request.get(at);
      expect(answer.headers()["content-disposition"], at).toMatch(/^attachment; filename="[\w.-]+"$/);
      runNothing(await answer.text(), holds, at);
    }
    for (const { at, holds } of documentsOut(made)) {
      const answer = await context.request.get(at);
      expect(answer.headers()["content-type"], at).toMatch(/^application\/json/);
      const all = textsIn(await answer.json()).join("\n");
      expect(
        holds.filter((place) => !all.includes(hostile[place])),
        at,
      ).toEqual([]);
    }
    const packet = await context.request.get(`/claims/${made.claim}/packet.pdf`);
    const printed = (await readPdf(await packet.body())).map(({ text }) => plain(text)).join("");
    expect(inPacket.filter((place) => !printed.includes(plain(hostile[place])))).toEqual([]);
  });

  test("stand in what an address, a name or a browser says of itself, before and after signing in", async ({
    browser,
  }) => {
    const userAgent = `Chrome/150 (${hostileAndShort})`;
    const stranger = await browser.newContext({ userAgent, storageState: { cookies: [], origins: [] } });
    const { newWalk } = await watchForHarm(stranger);
    const { page, look } = await newWalk();
    await page.goto(withEveryFilter(`/join/${encodeURIComponent(hostileAndShort)}`));
    await look();
    await page.goto(withEveryFilter("/jobs"));
    await look();
    const form = page.locator("form").filter({ has: page.getByLabel("E-mail") });
    await form.evaluate((element) => element.setAttribute("novalidate", "")); // other browsers may take it for an address
    await page.getByLabel("E-mail").fill(`${hostileAndShort}@company.example`);
    await page.getByRole("textbox", { name: "Password" }).fill(demoPassword);
    await page.getByRole("button", { name: "Sign in" }).click();
    await expect(page.getByRole("link", { name: /do not belong together/ })).toBeVisible();
    await look();
    await page.getByLabel("E-mail").fill("reader@company.example");
    await page.getByRole("textbox", { name: "Password" }).fill(demoPassword);
    await page.getByRole("button", { name: "Sign in" }).click();
    await page.waitForURL(/\/jobs\?/);
    await look();
    await page.goto("/account");
    await expect(page.getByRole("table", { name: "Where you are signed in" })).toContainText(hostileAndShort);
    await look();
    await stranger.close();
  });
});

async function enterMost(walk: Walk) {
  const [report] = await Promise.all([enterFile(walk), forecastItsParts()]);
  const order = await enterOfParts(walk);
  await enterAtTheDesk(walk);
  await enterOfSheets(walk);
  return { report, order, signal: await enterOfSignal(walk) };
}

async function enterOfItsClaim(walk: Walk) {
  await enterOfJob(walk);
  const changes = await enterOfTerms(walk);
  const claim = await enterOfClaim(walk);
  await enterOfKeeping(walk);
  return { changes, claim };
}

/** What a spreadsheet would run. Source: OWASP, CSV injection. */
function runsAsFormula(cell: string): boolean {
  return /^[=+\-@\t\r\n\0\uFF1D\uFF0B\uFF0D\uFF20]/.test(cell) && !/^-\d+(\.\d+)?$/.test(cell);
}

function textsIn(document: unknown): readonly string[] {
  if (typeof document === "string") return [document];
  return typeof document === "object" && document !== null ? Object.values(document).flatMap(textsIn) : [];
}

/** The last point of the first chart, as the keyboard reads it. */
async function readChart(page: Page): Promise<void> {
  const chart = page.locator("[role=application]").first();
  if ((await chart.count()) === 0) return;
  await chart.focus();
  await page.keyboard.press("End");
}

/** Lines of a packet break within long words. */
function plain(text: string): string {
  return text.replaceAll(/\s+/g, "");
}
