// Jobs are sent by programs, and for each another is opened at the desk; each time that ten more were answered the database
// server goes down at that moment, as in a power cut, with other requests under way, and comes back. A load drops tables,
// which a server writes out at once whatever its settings; opening a job rests on the settings alone.
import { createHash } from "node:crypto";
import { sql } from "drizzle-orm";
import { afterAll, beforeAll, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { ensureEmbeddedServer } from "@/db/embedded/ensure-server";
import { inTransaction } from "@/db/in-transaction";
import { migrateDatabase } from "@/db/migrate";
import { seedCatalogue } from "@/db/seed-catalogue";
import { answerOnce } from "@/db/writes/answer-once";
import { loadRecords } from "@/db/writes/load-records";
import { openJob } from "@/db/writes/sheets/open-job";
import { day } from "@/lib/calendar/day";
import { soakSeeds } from "../../soak-seeds";
import { newDataFolder, removeDataFolder, serverPid } from "../embedded/servers";
import { fileFolder, job, shopDocument, today } from "../intake-files";

const files = fileFolder();
const given = process.env.DATABASE_URL;
let folder = "";

beforeAll(async () => {
  await closeDatabase();
  folder = newDataFolder();
  const { url } = await ensureEmbeddedServer(folder);
  process.env.DATABASE_URL = url;
  await migrateDatabase(url);
  await seedCatalogue();
  await files.load(JSON.stringify(shopDocument));
});
afterAll(async () => {
  await closeDatabase();
  await removeDataFolder(folder);
  process.env.DATABASE_URL = given;
  files.remove();
});

/** As the address for programs does it: the load and its answer in one transaction. */
async function send(number: string): Promise<"added" | "added before" | "not answered"> {
  const row = job(number, `U-${number}`, { product_type: "front_load_washer" });
  const cells = Object.fromEntries(Object.entries(row).map(([column, value]) => [column, String(value)]));
  const bodyHash = createHash("sha256").update(number).digest("hex");
  const once = await answerOnce({ route: "POST /api/jobs", key: number, bodyHash }, async (store) => {
    await loadRecords({
      records: [{ kind: "jobs", pointer: "/jobs/0", cells }],
      sender: "Test program",
      mode: "add",
      today,
      within: (tx, result) => store(tx, { status: 201, body: result.kind }),
    });
    return { status: 201, body: "added" };
  });
  if (once.kind !== "answered") return "not answered";
  return once.repeated ? "added before" : "added";
}

/** @returns whether it was answered as opened */
async function open(number: string): Promise<boolean> {
  const job = { symptom: "will_not_drain", complaint: "", requestedOn: day("2025-06-01"), technician: "Kit" };
  const opened = await openJob({
    ...job,
    jobNumber: `O${number}`,
    serial: `U-${number}`,
    payer: "maker",
    callbackOf: undefined,
  });
  return opened.kind === "opened";
}

async function onFile(table: "jobs" | "open_jobs"): Promise<ReadonlySet<string>> {
  const statement = sql`select job_number as number from ${sql.identifier(table)}`;
  const rows = await readOnly((db) => db.rows<{ number: string }>(statement));
  const numbers = rows.map(({ number }) => number);
  expect(new Set(numbers).size).toBe(numbers.length);
  return new Set(numbers);
}

test("of all jobs that were answered as added or opened none is lost, and each sent again is answered as before", async () => {
  const added: string[] = [];
  const opened: string[] = [];
  let sent = 0;
  const rounds = soakSeeds([1, 2, 3, 4]);
  for (const round of rounds) {
    const unanswered: string[] = [];
    let isDown = false;
    const program = async () => {
      while (!isDown) {
        const number = `J-${++sent}`;
        const outcome = await send(number).catch(() => "not answered" as const);
        if (outcome === "not answered") unanswered.push(number);
        else {
          added.push(number);
          if (await open(number).catch(() => false)) opened.push(`O${number}`);
        }
        if (added.length < round * 10 || isDown) continue;
        isDown = true;
        process.kill(serverPid(folder), "SIGQUIT"); // "immediate": nothing is written out, no transaction ended
      }
    };
    await Promise.all([program(), program(), program()]);
    await ensureEmbeddedServer(folder);
    const [found, foundOpen] = [await onFile("jobs"), await onFile("open_jobs")];
    expect(added.filter((number) => !found.has(number))).toEqual([]);
    expect(opened.filter((number) => !foundOpen.has(number))).toEqual([]);
    await inTransaction((tx) =>
      tx.execute(sql`update idempotency_keys set run_until = now() - interval '1 second' where state = 'running'`),
    ); // two minutes later
    for (const number of unanswered) {
      const outcome = await send(number);
      expect(["added", "added before"]).toContain(outcome);
      expect(outcome === "added before", number).toBe(found.has(number)); // stored with its answer, or neither
      added.push(number);
    }
  }
  expect(added.length).toBeGreaterThanOrEqual(rounds.length * 10);
  expect(opened.length).toBeGreaterThan(added.length / 2);
  expect(await send(added[0] ?? "")).toBe("added before");
  expect(await send(added.at(-1) ?? "")).toBe("added before");
  expect([...(await onFile("jobs"))].sort()).toEqual([...added].sort());
});
