// Jobs for tests that build claims. What one test claims, none after it on the same site can claim again: they take work whose
// filing day has passed, of which there is plenty, and leave what can still be filed to the tests of those lists.
import { expect, type Page } from "@playwright/test";

/** In the text of a row: the ten jobs whose claims the no-drain cases build. */
export const noDrainJob = /J-100(0[1-9]|10)(?!\d)/;

/** Number of a job with covered work that was never filed. */
export async function freeJob(page: Page): Promise<string> {
  await page.goto("/claims/unclaimed?class=late");
  // Of the same list are claims that were never corrected; those lead to the claim.
  const [job] = await page
    .getByRole("rowheader")
    .filter({ hasNotText: noDrainJob })
    .locator('a[href^="/claims/for/"]')
    .allTextContents();
  expect(job, "a job with covered work that nobody has claimed").toBeDefined();
  return job ?? "";
}
