// A clock that is put forward a year or back a day while people are signed in, requests are under way and things wait for
// their time. The clocks of the site and of its database are one machine's: that both jump is the same as that all instants
// on record are moved the other way.
import { createHash, randomUUID } from "node:crypto";
import { sql } from "drizzle-orm";
import { afterAll, beforeEach, describe, expect, test, vi } from "vitest";
import { todayIn } from "@/app/_clock/today";
import { loadSignedIn } from "@/app/_people/load-signed-in";
import { runRetention } from "@/app/commands/nightly/run-retention";
import { keptAnswers } from "@/app/repeats/kept-answers";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { inTransaction } from "@/db/in-transaction";
import { findInvitation } from "@/db/queries/invitations";
import { loadSessions } from "@/db/queries/sessions";
import { answerOnce } from "@/db/writes/answer-once";
import { makeApiKey, recogniseApiKey } from "@/db/writes/api-keys";
import { invite } from "@/db/writes/people/invite";
import { countTry } from "@/db/writes/people/sign-in-tries";
import { mostInARow, windowMs } from "@/lib/people/sign-in-delay";
import { asDatabaseOwner } from "../own-database";
import { fileFolder, shopDocument, startAfresh } from "./intake-files";
import { sessionHeaders, somebody } from "./people/signed-in";

const files = fileFolder();
const minute = 60_000;
const day = 24 * 60 * minute;
const year = 365 * day;

beforeEach(async () => {
  await startAfresh();
  await asDatabaseOwner(
    "truncate people, sign_in_tries, idempotency_keys, invitations, api_keys, program_runs cascade",
  );
  await files.load(JSON.stringify({ ...shopDocument, demo: false }));
});
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

const instants = {
  sessions: ["created_at", "expires_at", "seen_at"],
  idempotency_keys: ["run_until", "expires_at"],
  invitations: ["created_at", "expires_at"],
  api_keys: ["created_at", "expires_at"],
  file_drafts: ["created_at", "updated_at"],
  program_runs: ["started_at", "finished_at"],
};

/** Both clocks jump by so many milliseconds. */
async function jump(ms: number): Promise<void> {
  const moved = Object.entries(instants).map(
    ([table, columns]) =>
      `update ${table} set ${columns.map((column) => `${column} = ${column} - interval '${ms} milliseconds'`).join(", ")}`,
  );
  await asDatabaseOwner(moved.join("; "));
}

describe("sessions", () => {
  const isSignedIn = async (headers: Record<string, string>) =>
    (await loadSignedIn(new Headers(headers))) !== undefined;

  test("none ends where the clock is put back a day, and from then on each runs out in its time", async () => {
    const [desk, phone] = [await somebody("owner"), await somebody("technician", "Kit")];
    const headers = [await sessionHeaders(desk), await sessionHeaders(phone)];
    await jump(-day);
    for (const each of headers) expect(await isSignedIn(each)).toBe(true);
    await jump(31 * minute); // nobody asked for anything meanwhile
    expect([await isSignedIn(headers[0] ?? {}), await isSignedIn(headers[1] ?? {})]).toEqual([false, true]);
  });

  test("a year ahead they are over, and are what they were when the clock is put right", async () => {
    const person = await somebody("manager");
    const headers = await sessionHeaders(person);
    await jump(year);
    expect(await isSignedIn(headers)).toBe(false);
    expect(await readOnly((db) => loadSessions(db, person.id))).toEqual([]);
    await jump(-year);
    expect(await isSignedIn(headers)).toBe(true);
  });

  test("one that was begun while the clock was a year ahead does not last for a year", async () => {
    const headers = await sessionHeaders(await somebody("owner"));
    await jump(-year);
    expect(await isSignedIn(headers)).toBe(false);
  });
});

describe("wrong tries", () => {
  const start = Date.UTC(2026, 9, 31, 9);
  const from = (address: string, device?: string) => ({ email: "o@shop.example", address, device });

  test.each([-day, year])(
    "whatever the clock does (%d ms), waits are short and a hundred in a row stay a hundred",
    async (by) => {
      for (let n = 0; n < mostInARow; n++) await countTry(from(`10.0.0.${n % 20}`), start + n * 20 * minute);
      const later = start + mostInARow * 20 * minute;
      for (const now of [later + by, later])
        expect(await countTry(from("10.0.1.1"), now)).toEqual({ kind: "only from a known device" });
      for (const now of [later, later + by, later])
        for (let n = 0; n < 12; n++) {
          const verdict = await countTry(from("10.0.1.1", "own"), now);
          if (verdict.kind === "wait") expect(verdict.ms).toBeGreaterThan(0);
          if (verdict.kind === "wait") expect(verdict.ms).toBeLessThanOrEqual(windowMs);
          else expect(verdict.kind).toBe("go on");
        }
    },
  );
});

describe("requests that come again", () => {
  const request = (key: string) => ({ route: "r", key, bodyHash: createHash("sha256").update("body").digest("hex") });
  let done = 0;
  const send = (key: string) =>
    answerOnce(request(key), async (store) => {
      const answer = { status: 201, body: {} };
      await inTransaction((tx) => store(tx, answer));
      done += 1;
      return answer;
    });
  beforeEach(() => {
    done = 0;
  });

  test.each([-day, year])(
    "are answered as before after a jump of %d ms, there and back, whoever asks meanwhile",
    async (by) => {
      await runRetention({ dry: false }); // last night\'s
      await send("k");
      for (const back of [by, -by]) {
        await jump(back);
        await send(randomUUID());
        await runRetention({ dry: false });
        expect(await send("k")).toMatchObject({ kind: "answered", repeated: true });
      }
      expect(done).toBe(3);
    },
  );

  test("what was running when the clock was put back a day is not waited for until then, and is done once", async () => {
    const first = answerOnce(request("k"), async (store) => {
      await jump(-day);
      expect(await send("k")).toMatchObject({ kind: "answered", repeated: false });
      return await inTransaction(async (tx) => {
        await store(tx, { status: 201, body: {} });
        return { status: 201, body: {} };
      });
    });
    await expect(first).rejects.toThrow("taken over");
    expect(done).toBe(1);
  });
});

test("keys and invitations that are over a year ahead are what they were when the clock is put right", async () => {
  const { key } = await makeApiKey({ name: "Sheets", scope: "read", days: 30, madeBy: "Oriel" });
  const made = await invite({
    name: "Wren",
    email: "wren@shop.example",
    role: "reader",
    technician: undefined,
    madeBy: "Oriel",
  });
  const token = made.kind === "made" ? made.token : "";
  const open = async () => [
    (await recogniseApiKey(key)) !== undefined,
    (await readOnly((db) => findInvitation(db, token))) !== undefined,
  ];
  for (const [by, wanted] of [
    [-day, true],
    [day, true],
    [year, false],
    [-year, true],
  ] as const) {
    await jump(by);
    expect(await open(), `${by} ms`).toEqual([wanted, wanted]);
  }
});

test("of the first night after a jump of a year nothing goes, of the second what is over its time", async () => {
  const drafts = async () => (await readOnly((db) => db.rows(sql`select from file_drafts`))).length;
  await inTransaction((tx) =>
    tx.execute(
      sql`insert into file_drafts values (gen_random_uuid(), 'x.csv', 7, ${"a".repeat(64)}, 'look', null, null, '{}', now(), now())`,
    ),
  );
  await runRetention({ dry: false });
  await jump(year);
  await runRetention({ dry: false });
  expect(await drafts()).toBe(1);
  await jump(-year); // the night's run now lies a year ahead
  await runRetention({ dry: false });
  expect(await drafts()).toBe(1);
  await jump(20 * day);
  await runRetention({ dry: false });
  await jump(15 * day);
  await runRetention({ dry: false });
  expect(await drafts()).toBe(1); // over its time since five days, but no run was for fifteen
  await jump(day);
  await runRetention({ dry: false });
  expect(await drafts()).toBe(0);
});

describe("the day", () => {
  const fixed = process.env.OHMSWORTH_TODAY;
  beforeEach(() => {
    delete process.env.OHMSWORTH_TODAY;
    vi.useFakeTimers({ toFake: ["Date", "performance"] });
    return () => {
      vi.useRealTimers();
      if (fixed !== undefined) process.env.OHMSWORTH_TODAY = fixed;
    };
  });

  test("is the company's at that moment, also across the change of zone and of day", () => {
    const at = (instant: string, timeZone: string) => {
      vi.setSystemTime(new Date(instant));
      return todayIn(timeZone);
    };
    // 1 November 2026 is when clocks in Chicago go back from 2:00 to 1:00 (zoneinfo 2026a).
    expect(at("2026-11-01T04:59:59Z", "America/Chicago")).toBe("2026-10-31");
    expect(at("2026-11-01T05:00:00Z", "America/Chicago")).toBe("2026-11-01");
    expect(at("2026-11-02T05:59:59Z", "America/Chicago")).toBe("2026-11-01"); // a day of 25 hours
    expect(at("2026-11-02T06:00:00Z", "America/Chicago")).toBe("2026-11-02");
    expect(at("2026-11-01T06:00:00Z", "America/Chicago")).toBe("2026-11-01"); // put back a day
    expect(at("2026-11-01T06:00:00Z", "Pacific/Kiritimati")).toBe("2026-11-01");
    expect(at("2026-11-01T10:00:00Z", "Pacific/Kiritimati")).toBe("2026-11-02");
  });

  test("answers that are kept are of the day that it is, and none outlasts ten minutes where the clock is put back", async () => {
    const kept = keptAnswers<string>();
    let times = 0;
    const ask = () =>
      kept("which day", async (_, today) => {
        times += 1;
        return () => today;
      });
    vi.setSystemTime(new Date("2026-11-02T18:00:00Z"));
    expect(await ask()).toBe("2026-11-02");
    vi.setSystemTime(new Date("2027-11-02T18:00:00Z"));
    expect(await ask()).toBe("2027-11-02");
    vi.setSystemTime(new Date("2026-11-02T15:00:00Z")); // three hours before it was asked first
    expect(await ask()).toBe("2026-11-02");
    expect(times).toBe(2);
    vi.advanceTimersByTime(11 * minute);
    await ask();
    expect(times).toBe(3);
  });
});
