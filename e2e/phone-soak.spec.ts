// Nothing that a technician has told the phone is lost, whatever happens to signal, server, store and tab. A few seeds here;
// `npm run soak -- sheet` walks two hundred.
import { type BrowserContext, expect, type Page, test } from "@playwright/test";
import { breakStore, fillStore, seeded, spoilSending } from "./bad-signal";
import { noDrainWalks, type Told } from "./no-drain-walks";
import { answerStep, openJobFor, stepName } from "./sheet-steps";

test.use({ viewport: { width: 390, height: 844 }, hasTouch: true });

const asked = process.env.SOAK_SEEDS;
const [first = 1, last = first] = (asked ?? "1-2").split("-").map(Number);
if (asked !== undefined) test.describe.configure({ mode: "parallel" }); // hours otherwise: each walk has a job of its own

for (let seed = first; seed <= last; seed++)
  test(`seed ${seed}: what the phone was told is on the server, each once`, async ({ browser, baseURL }) => {
    test.setTimeout(300_000);
    const context = await browser.newContext({ viewport: { width: 390, height: 844 }, ...(baseURL && { baseURL }) });
    await breakStore(context);
    const told = await walkInTheCellar(context, seed);
    await context.close();
    await isOnTheServer(await browser.newContext({ ...(baseURL && { baseURL }) }), told);
  });

interface ToldJob {
  readonly job: string;
  /** What stood in the path on the phone, in its order. */
  readonly path: readonly string[];
  readonly isClosed: boolean;
}

async function walkInTheCellar(context: BrowserContext, seed: number): Promise<ToldJob> {
  const random = seeded(seed);
  const walk = noDrainWalks[seed % noDrainWalks.length];
  let page = await context.newPage();
  const job = await openJobFor(page, walk?.serial ?? "", "will_not_drain");
  await page.reload();
  await expect(page.getByText(/opens without signal/)).toBeVisible({ timeout: 120_000 });
  const sending = await spoilSending(context, random);
  let answers = 0;
  for (let step = 0; step < 5; step++) {
    page = await upset(context, page, job, random);
    const name = await stepName(page);
    if (name === undefined) break;
    await tell(page, random() < 0.2 ? { skip: "Other" } : (walk?.readings[name] ?? { skip: "Other" }), random);
    await expect.poll(() => path(page).count()).toBeGreaterThan(answers);
    answers = await path(page).count();
  }
  const told = await path(page).allTextContents();
  const isClosed = random() < 0.5;
  if (isClosed) await close(page);
  if (random() < 0.5) page = await kill(context, page, job);
  sending.off();
  await context.setOffline(false);
  await settle(page, isClosed);
  return { job, path: told, isClosed };
}

const path = (page: Page) => page.locator("#sheet-flow ol > li");

/** Between two steps: the signal goes or comes back, the page is loaded again, the tab is killed. */
async function upset(context: BrowserContext, page: Page, job: string, random: () => number): Promise<Page> {
  const what = random();
  if (what < 0.25) await context.setOffline(what < 0.15);
  else if (what < 0.4) await page.reload();
  else if (what < 0.6) return await kill(context, page, job);
  return page;
}

/** Without a word to the page, as a phone does that runs out of memory. */
async function kill(context: BrowserContext, page: Page, job: string): Promise<Page> {
  await page.close();
  const next = await context.newPage();
  await next.goto(`/sheet/job/${job}`);
  const closed = next.getByRole("heading", { name: /is closed( on this phone)?$/ });
  await expect(next.locator("#sheet-flow").or(closed)).toBeVisible({ timeout: 60_000 });
  return next;
}

/** Now and then the phone's store is full: it says so and the step stays, or the server has taken the answer at once. */
async function tell(page: Page, told: Told, random: () => number): Promise<void> {
  if (random() < 0.2) {
    await fillStore(page, true);
    const before = await path(page).count();
    await answerStep(page, { skip: "Other" }, undefined, { mayFail: true });
    const after = await path(page).count();
    if (after === before) {
      await expect(page.getByText(/This phone could not keep it|too large/).first()).toBeVisible();
      await page.locator("#sheet-flow").getByRole("button", { name: "Skip" }).click(); // its reasons fold away
    }
    await fillStore(page, false);
    if (after > before) return;
  }
  await answerStep(page, told);
}

async function close(page: Page): Promise<void> {
  const flow = page.locator("#sheet-flow");
  const toFinding = flow.getByRole("button", { name: "Go to the finding with what there is" });
  if ((await toFinding.count()) > 0) await toFinding.click();
  await flow.getByRole("button", { name: "Review" }).click();
  await flow.getByRole("button", { name: "Close job" }).click();
  await expect(page.getByRole("heading", { name: /is closed( on this phone)?$|Review/ })).toBeVisible();
}

/** The signal is back and the server well: whatever was refused is sent again, and everything goes. */
async function settle(page: Page, isClosed: boolean): Promise<void> {
  const again = page.getByRole("button", { name: "Send again" });
  const done = isClosed ? page.getByRole("heading", { name: /^Job \S+ is closed$/ }) : page.getByText(/^Sent/);
  await expect(async () => {
    await page.evaluate(() => window.dispatchEvent(new Event("online")));
    if ((await again.count()) > 0) await again.first().click();
    await expect(done).toBeVisible({ timeout: 2_000 });
  }).toPass({ timeout: 120_000 });
}

/** A device that has never seen the job shows what the server has. */
async function isOnTheServer(context: BrowserContext, { job, path: told, isClosed }: ToldJob): Promise<void> {
  const page = await context.newPage();
  if (isClosed) {
    await page.goto(`/jobs/${job}`);
    const steps = page.getByRole("heading", { name: "Path by the check sheet" }).locator("xpath=..").locator("ol > li");
    await expect(steps).toHaveCount(told.length);
  } else {
    await page.goto(`/sheet/job/${job}`);
    await expect(page.locator("#sheet-flow")).toBeVisible();
    expect(await path(page).allTextContents()).toEqual(told);
  }
  await context.close();
}
