// What a page or an action that fails inside the database tells: that it failed, that the rest works, and a code; no more.
import { readFileSync } from "node:fs";
import { expect, type Page, test } from "@playwright/test";
import { Client } from "pg";
import { siteRole } from "@/db/site-role/site-address";
import { ownSite } from "./sites.mjs";

const inside = /Failed query|permission denied|42501|node_modules|relation "|Drizzle|postgres|\.tsx?:\d+|\n\s+at /i;

/** While the site may neither read nor change these tables. */
async function without(tables: string, act: () => Promise<void>): Promise<void> {
  const owner = new Client({ connectionString: readFileSync(ownSite.note, "utf8") });
  await owner.connect();
  const role = siteRole(owner.database ?? "");
  const rights = "select, insert, update, delete";
  try {
    await owner.query(`revoke ${rights} on ${tables} from ${role}`);
    await act();
  } finally {
    await owner.query(`grant ${rights} on ${tables} to ${role}`);
    await owner.end();
  }
}

async function saysSo(page: Page): Promise<void> {
  await expect(page.getByRole("heading", { name: "This page could not be put together" })).toBeVisible();
  await expect(page.getByText("What was stored stands as it was")).toBeVisible();
  await expect(page.locator("main code")).toHaveText(/^\d{3,}(@E\d+)?$/);
  expect(await page.content()).not.toMatch(inside);
}

test("a page and an action that fail say so with a code and nothing of the inside, and work again when the cause is gone", async ({
  page,
}) => {
  await without("units", async () => {
    await page.goto("/units");
    await saysSo(page);
  });
  await page.getByRole("button", { name: "Try again" }).click();
  await expect(page.locator('main a[href^="/units/"]').first()).toBeVisible();

  await page.goto("/jobs/J-10004/edit?field=complaint");
  const before = await page.getByLabel("What it should say").inputValue();
  await page.getByLabel("What it should say").fill("It hums and stops.");
  await page.getByLabel("Why").fill("Said so on the telephone");
  await without("hand_edits", async () => {
    await page.getByRole("button", { name: "Set it" }).click();
    await saysSo(page);
    const typed = page.getByRole("definition");
    await expect(typed).toHaveText(["It hums and stops.", "Said so on the telephone"]); // to be copied, since the form is gone
  });
  await page.goto("/jobs/J-10004/edit?field=complaint");
  expect(await page.getByLabel("What it should say").inputValue()).toBe(before);
});

test("a page that was left open says within half a minute that the site is ill, and no longer when it is well", async ({
  page,
  context,
}) => {
  const owner = new Client({ connectionString: readFileSync(ownSite.note, "utf8") });
  await owner.connect();
  const says = (words: string) => page.getByRole("alert").filter({ hasText: words });
  const halfAMinute = () => page.clock.fastForward(30_000); // of the page: nobody waits for it here
  try {
    await page.clock.install();
    await page.goto("/units");
    await halfAMinute();
    await owner.query("begin; lock table drizzle.__drizzle_migrations in access exclusive mode"); // held up past two seconds
    await halfAMinute();
    await expect(says("The database does not answer")).toBeVisible();
    await owner.query("rollback");
    await halfAMinute();
    await expect(says("The database does not answer")).toBeHidden();

    await context.setOffline(true);
    await halfAMinute();
    await expect(says("The site does not answer")).toBeVisible();
    await context.setOffline(false);
    await halfAMinute();
    await expect(says("The site does not answer")).toBeHidden();
  } finally {
    await owner.end();
  }
});
