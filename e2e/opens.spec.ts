import { expect, test } from "@playwright/test";

test("the site answers with its protective headers and without naming its maker", async ({ page }) => {
  const answer = await page.goto("/");
  const headers = answer?.headers() ?? {};
  expect(headers["content-security-policy"]).toContain("frame-ancestors 'none'");
  expect(headers["x-content-type-options"]).toBe("nosniff");
  expect(headers["referrer-policy"]).toBe("same-origin");
  expect(headers["x-powered-by"]).toBeUndefined();
});
