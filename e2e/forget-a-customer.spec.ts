// The owner forgets a customer: a trial that changes nothing, then for good; the job stays, without the name.
import { expect, test } from "@playwright/test";
import { freeJob } from "./free-jobs";

const customer = "Quillfeather Ambrose";

test("a customer is looked for, then erased for good, and the job that was done stays", async ({ page }) => {
  const job = await freeJob(page);
  await page.goto(`/jobs/${encodeURIComponent(job)}/edit?field=complaint`);
  await page.getByLabel("What it should say").fill(`Mr. ${customer} says that it hums.`);
  await page.getByLabel("Why").fill("Said so on the telephone");
  await page.getByRole("button", { name: "Set it" }).click();
  await expect(page.getByText("Complaint is set")).toBeVisible();

  await page.goto("/shop/keeping");
  await page.getByLabel("Names, numbers, addresses").fill(customer);
  await page.getByLabel("Jobs done for the customer").fill(job);
  await page.getByLabel("Why").fill("Asked for by letter");
  await page.getByRole("button", { name: "Look what would go" }).click();
  await expect(page.getByText("This would be erased; nothing has been yet")).toBeVisible();
  await page.getByRole("button", { name: "Erase for good" }).click();
  await expect(page.getByText("Tick the box first").first()).toBeVisible();
  expect(await (await page.request.get(`/jobs/${encodeURIComponent(job)}`)).text()).toContain("Quillfeather");

  await page.getByRole("button", { name: "Look what would go" }).click();
  await page.getByRole("checkbox", { name: /cannot be brought back/ }).check();
  await page.getByRole("button", { name: "Erase for good" }).click();
  await expect(page.getByText("The customer is forgotten")).toBeVisible();
  await expect(page.getByRole("table", { name: "Done so far, the latest first" })).toContainText("Asked for by letter");

  for (const path of ["", "/history"]) {
    const answer = await page.request.get(`/jobs/${encodeURIComponent(job)}${path}`);
    expect(answer.status()).toBe(200);
    const text = await answer.text();
    expect(text).not.toMatch(/Quillfeather|Ambrose/);
    if (path === "") expect(text).toContain("says that it hums");
  }
});
