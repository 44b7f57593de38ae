// A technician comes to their own jobs only, whatever number is put in an address or a form.
import { readFileSync } from "node:fs";
import { type APIRequestContext, expect, test } from "@playwright/test";
import { Client } from "pg";
import { pageActs, routeActs } from "../app/_people/route-acts";
import { demoPassword, demoPeople } from "../lib/people/demo-people";
import { actKeys, may } from "../lib/people/permissions";
import { ownSite } from "./sites.mjs";

test.use({ storageState: { cookies: [], origins: [] } });

const origin = `http://127.0.0.1:${ownSite.port}`;
const technician = demoPeople.find(({ role }) => role === "technician");
const name = technician?.technician ?? "";

/** Pages and addresses of one job that technicians may open at all. */
const places = Object.entries({ ...pagesAsGet(), ...routeActs })
  .map(([key, act]) => ({ key, act: actKeys.find((known) => known === act) }))
  .filter(({ key, act }) => key.includes("/[number]") && act !== undefined && may("technician", act))
  .map(({ key }) => key.split(" ") as [string, string]); // "GET /jobs/[number]"

function pagesAsGet(): Readonly<Record<string, string>> {
  return Object.fromEntries(Object.entries(pageActs).map(([page, act]) => [`GET ${page}`, act]));
}

async function ask(request: APIRequestContext, [method, place]: [string, string], number: string, id = "1") {
  const address = place.replace("[number]", encodeURIComponent(number)).replace("[id]", id);
  return await request.fetch(`${origin}${address}`, { method, headers: { origin }, maxRedirects: 0 });
}

interface Job {
  readonly number: string;
  readonly photo: string;
}

/** The latest closed job of theirs, with a photo where there is one. */
async function jobOf(db: Client, whose: "own" | "another's"): Promise<Job> {
  const { rows } = await db.query<Job>(
    `select j.job_number as number, coalesce(min(a.attachment_id), 1)::text as photo
     from jobs j left join attachments a using (unit_id, job_id) where (j.technician = $1) = $2 and j.status = 'closed'
     group by 1, j.completed_on order by count(a.attachment_id) > 0 desc, j.completed_on desc, 1 limit 1`,
    [name, whose === "own"],
  );
  const [job] = rows;
  if (job === undefined) throw new Error(`there is no job of ${whose}`);
  return job;
}

async function askFor(db: Client, { number }: Job): Promise<void> {
  await db.query(
    `insert into technician_asks (unit_id, job_id, item, label, subject, technician, asked_at, asked_by)
     select unit_id, job_id, 'tried', 'Tried', 'other', technician, now(), 'Oriel' from jobs where job_number = $1`,
    [number],
  );
}

async function answerOf(db: Client, { number }: Job): Promise<string | null | undefined> {
  const { rows } = await db.query<{ answer: string | null }>(
    "select answer from technician_asks a join jobs j using (unit_id, job_id) where j.job_number = $1 and item = 'tried'",
    [number],
  );
  return rows[0]?.answer;
}

test("another's job is not there behind any page or address, and no form of one's own reaches it", async ({ page }) => {
  const db = new Client({ connectionString: readFileSync(ownSite.note, "utf8") });
  await db.connect();
  try {
    const [own, others] = [await jobOf(db, "own"), await jobOf(db, "another's")];
    await page.goto("/sign-in");
    await page.getByLabel("E-mail").fill(technician?.email ?? "");
    await page.getByRole("textbox", { name: "Password" }).fill(demoPassword);
    await page.getByRole("button", { name: "Sign in" }).click();
    await page.waitForURL("**/today");

    expect(places.length).toBeGreaterThan(8);
    for (const place of places) {
      const [there, nowhere] = [
        await ask(page.request, place, others.number, others.photo),
        await ask(page.request, place, "J-0", "1"),
      ];
      expect([there.status(), nowhere.status()], place.join(" ")).toEqual([404, 404]);
      if (there.headers()["content-type"]?.includes("json"))
        expect((await there.text()).replace(others.number, "J-0")).toBe(await nowhere.text());
    }
    expect((await ask(page.request, ["GET", "/jobs/[number]/photos/[id]"], own.number, own.photo)).status()).toBe(200);

    await askFor(db, own);
    await askFor(db, others);
    const answer = async () => {
      await page.goto(`/sheet/asked/${encodeURIComponent(own.number)}`);
      await page.getByRole("button", { name: "It cannot be had" }).click();
    };
    await page.route(/\/sheet\/asked\//, async (route) => {
      const postData = route.request().postData()?.replaceAll(own.number, others.number);
      await route.continue(postData === undefined ? {} : { postData });
    });
    await answer();
    await expect(page.getByRole("heading", { level: 1 })).toHaveText("There is nothing at this address");
    expect(await answerOf(db, others)).toBeNull();
    await page.unroute(/\/sheet\/asked\//);
    await answer();
    await expect(page.getByText("Nothing is asked any more")).toBeVisible();
    expect(await answerOf(db, own)).toBe("cannot be had");
  } finally {
    await db.query("delete from technician_asks where item = 'tried'");
    await db.end();
  }
});
