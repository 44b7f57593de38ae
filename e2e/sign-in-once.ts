import { rmSync } from "node:fs";
import { chromium, type FullConfig } from "@playwright/test";
import { demoPassword } from "@/lib/people/demo-people";
import { sites } from "./sites.mjs";

/** Signs the owner in on each site, once for all tests. @returns what takes the cookies away when all have run */
export default async function signInOnce(config: FullConfig): Promise<() => void> {
  const browser = await chromium.launch(config.projects[0]?.use.launchOptions);
  try {
    for (const { port, owner } of sites) {
      const context = await browser.newContext({ baseURL: `http://127.0.0.1:${port}` });
      const page = await context.newPage();
      await page.goto("/sign-in");
      await page.getByLabel("E-mail").fill("owner@company.example");
      await page.getByLabel("Password").fill(demoPassword);
      await page.getByRole("button", { name: "Sign in" }).click();
      await page.waitForURL(/\/today/);
      await context.storageState({ path: owner });
      await context.close();
    }
  } finally {
    await browser.close();
  }
  return () => {
    for (const { owner } of sites) rmSync(owner, { force: true });
  };
}
