import { sql } from "drizzle-orm";
import { afterAll, beforeAll, expect, test, vi } from "vitest";
import { signInByPassword } from "@/app/_people/sign-in";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { loadSignIns } from "@/db/queries/sign-ins";
import { noteSignIn } from "@/db/writes/people/note-sign-in";
import { asDatabaseOwner } from "../../own-database";
import { somebody, testPassword } from "./signed-in";
import { openBrowser } from "./stand-in-browser";

vi.mock("next/headers", async () => (await import("./stand-in-browser")).nextHeaders);

beforeAll(async () => {
  await asDatabaseOwner("truncate people, sign_in_tries cascade");
  openBrowser({ "ohmsworth-peer": "10.4.0.1" });
});
afterAll(closeDatabase);

test("every try is in the list, and nothing that was typed", async () => {
  const { email } = await somebody("owner");
  const typed = ["nobody@nowhere.example", "a wrong one altogether"] as const;
  expect((await signInByPassword({ email: typed[0], password: testPassword })).kind).toBe("no match");
  expect((await signInByPassword({ email, password: typed[1] })).kind).toBe("no match");
  expect((await signInByPassword({ email, password: testPassword })).kind).toBe("signed in");
  expect((await signInByPassword({ email: email.toUpperCase(), password: testPassword })).kind).toBe("signed in");
  const { rows, failed, total } = await readOnly((db) => loadSignIns(db, 10));
  expect(rows.map(({ name, outcome, cameFrom, knownDevice }) => [name, outcome, cameFrom, knownDevice])).toEqual([
    ["Test owner", "signed in", "10.4.0.1", true],
    ["Test owner", "signed in", "10.4.0.1", false],
    ["Test owner", "no match", "10.4.0.1", false],
    [undefined, "no match", "10.4.0.1", false],
  ]);
  expect([failed, total]).toEqual([2, 4]);
  const stored = JSON.stringify(await readOnly((db) => db.rows(sql`select * from sign_ins`)));
  for (const words of [...typed, testPassword, email]) expect(stored).not.toContain(words);
});

test("who goes on trying while held back gets one line a minute", async () => {
  const held = { email: "x@y.example", outcome: "held back", cameFrom: "10.4.0.9", knownDevice: false } as const;
  for (let i = 0; i < 5; i++) await noteSignIn(held);
  const lines = await readOnly((db) => db.rows(sql`select from sign_ins where outcome = 'held back'`));
  expect(lines).toHaveLength(1);
});
