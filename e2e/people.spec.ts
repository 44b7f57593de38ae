// Who gets in, and what is open to whom. Every test begins with nobody signed in.

import { base32 } from "@better-auth/utils/base32";
import { createOTP } from "@better-auth/utils/otp";
import { type APIRequestContext, type BrowserContext, expect, type Page, test } from "@playwright/test";
import { pageActs, routeActs } from "../app/_people/route-acts";
import { demoPassword, demoPeople } from "../lib/people/demo-people";
import { actKeys, may } from "../lib/people/permissions";
import { emptySite, ownSite } from "./sites.mjs";

test.use({ storageState: { cookies: [], origins: [] } });

const ownerPassword = "a kettle of grey slate";
const own = `http://127.0.0.1:${ownSite.port}`;

async function signIn(page: Page, email: string, password: string) {
  await page.getByLabel("E-mail").fill(email);
  await page.getByRole("textbox", { name: "Password" }).fill(password);
  await page.getByRole("button", { name: "Sign in" }).click();
}

test("the first who comes makes the owner, sets up a second factor, invites, and nobody makes an owner again", async ({
  browser,
}) => {
  const baseURL = `http://127.0.0.1:${emptySite.port}`;
  const context = await browser.newContext({ baseURL, storageState: { cookies: [], origins: [] } });
  const page = await context.newPage();
  await page.goto("/claims");
  await expect(page).toHaveURL(/\/set-up$/);
  await page.getByLabel("Your name").fill("Tamsin");
  await page.getByLabel("E-mail").fill("Tamsin@shop.example");
  await page.getByRole("textbox", { name: "Password" }).fill("passwordpassword");
  await page.getByRole("button", { name: "Make the owner" }).click();
  await expect(page.getByRole("link", { name: /repetition or a run/ })).toBeVisible();
  await page.getByRole("textbox", { name: "Password" }).fill(ownerPassword);
  await page.getByRole("button", { name: "Make the owner" }).click();
  await page.waitForURL("**/today");
  expect((await page.goto("/set-up"))?.status()).toBe(404);

  await page.goto("/shop/people");
  await expect(page).toHaveURL(/\/account\/second-factor/);
  await page.getByRole("button", { name: "Show the picture to read" }).click();
  const letters =
    (await page
      .locator("form p")
      .filter({ hasText: /^[A-Z2-7]{40,}$/ })
      .textContent()) ?? "";
  await page.getByLabel("The six digits that it shows now").fill(await codeOf(letters));
  await page.getByRole("button", { name: "Ask for it from now on" }).click();
  const codes = page.locator("li").filter({ hasText: /^[A-Z2-9]{4}(-[A-Z2-9]{4}){3}$/ });
  await expect(codes).toHaveCount(10);
  const recovery = await codes.allTextContents();

  await page.goto("/shop/people");
  await page.getByLabel("Name", { exact: true }).fill("Wren");
  await page.getByLabel("E-mail").fill("wren@shop.example");
  await page.getByLabel("Role", { exact: true }).selectOption("reader");
  await page.getByRole("button", { name: "Make a link" }).click();
  const link = (await page.getByText(/^http.*\/join\//).textContent()) ?? "";
  await joinAndRead(await browser.newContext({ baseURL, storageState: { cookies: [], origins: [] } }), link);

  await page.getByRole("banner").getByText("Tamsin", { exact: true }).click();
  await page.getByRole("button", { name: "Sign out", exact: true }).click();
  await expect(page.getByText("You are signed out")).toBeVisible();
  await page.goto("/sign-in");
  await signIn(page, "tamsin@shop.example", ownerPassword);
  await page.waitForURL("**/sign-in/code**");
  expect((await page.goto("/today"))?.url()).toContain("/sign-in");
  await page.goto("/sign-in/code");
  await page.getByLabel("Code", { exact: true }).fill(recovery[0] ?? "");
  await page.getByRole("button", { name: "Go on" }).click();
  await page.waitForURL("**/today");
  await context.close();
});

/** The link opens once, for whom it was made, with the role that was meant. */
async function joinAndRead(context: BrowserContext, link: string) {
  const page = await context.newPage();
  await page.goto(link);
  await page.getByRole("textbox", { name: "Password" }).fill("slate under a grey kettle");
  await page.getByRole("button", { name: "Use this password" }).click();
  await signIn(page, "wren@shop.example", "slate under a grey kettle");
  await page.waitForURL("**/today");
  expect((await page.goto("/files/new"))?.status()).toBe(403);
  await expect(page.getByText("Only the warranty administrator and the owner may load files")).toBeVisible();
  await page.goto(link);
  await expect(page.getByRole("heading", { name: "This link no longer opens" })).toBeVisible();
  await context.close();
}

async function codeOf(letters: string): Promise<string> {
  const secret = new TextDecoder().decode(base32.decode(letters));
  return await createOTP(secret).totp();
}

test("a wrong password and an unknown address are answered alike; the way back leads to what was asked for", async ({
  page,
}) => {
  await page.goto("/parts?sort=name");
  await expect(page).toHaveURL(/\/sign-in\?to=/);
  await expect(page.getByRole("navigation", { name: "Places" }).getByRole("link")).toHaveCount(0);
  const answers: string[] = [];
  for (const email of ["manager@company.example", "nobody@company.example"]) {
    await page.goto("/parts?sort=name");
    await signIn(page, email, "something else altogether");
    const answer = page.getByRole("link", { name: /do not belong together/ });
    await expect(answer).toBeVisible();
    await expect(page.getByLabel("E-mail")).toHaveValue(email);
    answers.push((await answer.textContent()) ?? "");
  }
  expect(answers[0]).toBe(answers[1]);
  await signIn(page, "manager@company.example", demoPassword);
  await expect(page).toHaveURL(/\/parts\?sort=name/);
});

test("a session that is ended elsewhere opens nothing from then on, and neither does its cookie after signing out", async ({
  browser,
}) => {
  const [first, second] = [await newcomer(browser), await newcomer(browser)];
  await first.goto("/account");
  await first.getByRole("button", { name: "Sign out everywhere else" }).click();
  await expect(first.getByRole("button", { name: "Sign out everywhere else" })).toHaveCount(0);
  await second.goto("/today");
  await expect(second).toHaveURL(/\/sign-in/);
  const cookies = await first.context().cookies();
  await first.getByRole("banner").getByText("Maren", { exact: true }).click();
  await first.getByRole("button", { name: "Sign out", exact: true }).click();
  await expect(first.getByText("You are signed out")).toBeVisible();
  await first.context().addCookies(cookies);
  await first.goto("/today");
  await expect(first).toHaveURL(/\/sign-in/);
  for (const cookie of cookies.filter(({ name }) => name.startsWith("ohmsworth")))
    expect(cookie).toMatchObject({ httpOnly: true, sameSite: "Lax" });
});

test("a form that was left open until its session ended keeps what was typed, and goes once the same person is back", async ({
  browser,
}) => {
  const [desk, elsewhere] = [await newcomer(browser), await newcomer(browser)];
  await desk.goto("/sheet/open");
  await desk.getByLabel("Job number").fill("J-KEPT-1");
  await desk.getByLabel("Serial").fill("not on any plate");
  await elsewhere.goto("/account");
  await elsewhere.getByRole("button", { name: "Sign out everywhere else" }).click();
  await expect(elsewhere.getByRole("button", { name: "Sign out everywhere else" })).toHaveCount(0);
  await desk.getByRole("button", { name: "Open the job" }).click();
  const told = desk.getByRole("dialog", { name: "Your session is over, and nothing was sent" });
  await expect(told).toBeVisible();
  await expect(desk.getByLabel("Job number")).toHaveValue("J-KEPT-1");
  const opening = desk.context().waitForEvent("page");
  await told.getByRole("link", { name: "Sign in" }).click();
  const beside = await opening;
  await signIn(beside, "owner@company.example", demoPassword);
  await expect(beside.getByRole("heading", { name: "You are signed in again" })).toBeVisible();
  await desk.getByRole("button", { name: "Look again" }).click();
  await expect(desk.getByRole("dialog", { name: "Somebody else is signed in now" })).toBeVisible();
  await desk.context().clearCookies();
  await beside.goto("/sign-in?to=/account/back");
  await signIn(beside, "manager@company.example", demoPassword);
  await expect(beside.getByRole("heading", { name: "You are signed in again" })).toBeVisible();
  await desk.getByRole("button", { name: "Look again" }).click();
  await desk.getByRole("button", { name: "Send it now" }).click();
  // The server has read it now: it says what lacks, and all that was typed is still there.
  await expect(desk.getByText("Choose what the customer notices.").first()).toBeVisible();
  await expect(desk.getByLabel("Job number")).toHaveValue("J-KEPT-1");
});

async function newcomer(browser: { newContext: (options: object) => Promise<BrowserContext> }): Promise<Page> {
  const context = await browser.newContext({ baseURL: own, storageState: { cookies: [], origins: [] } });
  const page = await context.newPage();
  await page.goto("/sign-in");
  await signIn(page, "manager@company.example", demoPassword);
  await page.waitForURL("**/today");
  return page;
}

/** Numbers and names that stand in the invented company; what a role may not open is refused before they are looked up. */
const filled: Readonly<Record<string, string>> = {
  "[number]": "J-10004",
  "[component]": "drain_pump",
  "[symptom]": "will_not_drain",
  "[batch]": "3",
  "[type]": "front_load_washer",
};
const addressOf = (route: string) => route.replaceAll(/\[\w+\]/g, (part) => filled[part] ?? "1");

const cells = [
  ...Object.entries(pageActs).map(([route, act]) => ({ method: "GET", route, act })),
  ...Object.entries(routeActs).map(([key, act]) => {
    const [method = "", route = ""] = key.split(" ");
    return { method, route, act };
  }),
].flatMap((cell) => {
  const act = actKeys.find((key) => key === cell.act);
  return act === undefined ? [] : [{ ...cell, act }];
});

test("no role opens a page or an address that the table of acts does not give it, and nobody opens any", async ({
  browser,
}) => {
  test.setTimeout(180_000);
  expect(cells.length).toBeGreaterThan(90);
  const wrong: string[] = [];
  for (const { role, email } of [...demoPeople, { role: undefined, email: "" }]) {
    const context = await browser.newContext({ baseURL: own, storageState: { cookies: [], origins: [] } });
    if (role !== undefined) {
      const page = await context.newPage();
      await page.goto("/sign-in");
      await signIn(page, email, demoPassword);
      await page.waitForURL("**/today");
    }
    for (const { method, route, act } of cells) {
      const allowed = role !== undefined && may(role, act);
      if (allowed && role !== "technician") continue; // other tests open those as the owner
      const status = await statusOf(context.request, method, route);
      const fits =
        role === undefined ? [307, 401].includes(status) : allowed ? status < 500 && status !== 401 : status === 403;
      if (!fits) wrong.push(`${role ?? "nobody"}, ${method} ${route}: ${status}`);
    }
    for (const headers of [
      {},
      { origin: "http://elsewhere.example" },
      { "sec-fetch-site": "cross-site", origin: own },
    ]) {
      const status = (await context.request.post("/files/upload?name=a.csv", { headers, data: "a" })).status();
      if (status !== 403) wrong.push(`${role ?? "nobody"}, from elsewhere: ${status}`);
    }
    await context.close();
  }
  expect(wrong).toEqual([]);
});

/** Nothing that is allowed is done here: a POST without its body changes nothing. */
async function statusOf(request: APIRequestContext, method: string, route: string): Promise<number> {
  const options = { method, maxRedirects: 0, headers: { origin: own }, timeout: 30_000 };
  const response = await request.fetch(`${own}${addressOf(route)}`, options);
  await response.dispose();
  return response.status();
}
