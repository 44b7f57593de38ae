// The check sheet walked on a phone: ten washers that will not drain, each to its own end; the budget of taps; without
// signal; and a gap that the desk finds, through the technician, back into the claim.
import { expect, type Page, test } from "@playwright/test";
import { noDrainWalks, type Told } from "./no-drain-walks";
import { answerStep, openJobFor, stepName } from "./sheet-steps";

test.use({ viewport: { width: 390, height: 844 }, hasTouch: true });

test.describe("ten washers that will not drain, on the phone", () => {
  for (const walk of noDrainWalks) {
    test(walk.name, async ({ page }) => {
      test.setTimeout(180_000);
      const job = await openJobFor(page, walk.serial, "will_not_drain");
      const asked = await walkToEnd(page, walk.readings);
      for (const step of walk.asked) expect(asked, "steps that were asked").toContain(step);
      for (const step of walk.never) expect(asked, "steps that were asked").not.toContain(step);
      await expect(page.getByRole("heading", { level: 2 }).first()).toContainText(walk.finding);
      await closeJob(page);
      await page.goto(`/jobs/${job}`);
      await expect(page.getByRole("heading", { level: 1 })).toContainText(walk.titled);
      await page.goto(`/jobs?count=failures&words=${job}`);
      await expect(page.getByRole("link", { name: job, exact: true })).toHaveCount(walk.isFailure ? 1 : 0);
    });
  }
});

/** Answers every step that is asked with what the machine shows, until the finding. */
async function walkToEnd(page: Page, readings: Readonly<Record<string, Told>>): Promise<readonly string[]> {
  const asked: string[] = [];
  for (let step = 0; step < 30; step++) {
    const name = await stepName(page);
    if (name === undefined) return asked;
    asked.push(name);
    await answerStep(page, readings[name] ?? { skip: "Other" });
  }
  throw new Error(`the sheet does not end: ${asked.join(", ")}`);
}

async function closeJob(page: Page) {
  await page.getByRole("button", { name: "Review" }).click();
  await page.getByRole("button", { name: "Close job" }).click();
  await expect(page.getByRole("heading", { name: /is closed$/ })).toBeVisible({ timeout: 60_000 });
}
