import crypto from "node:crypto";
import { syncBuiltinESMExports } from "node:module";
import { sql } from "drizzle-orm";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { loadSession, loadSignedIn } from "@/app/_people/load-signed-in";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { inTransaction } from "@/db/in-transaction";
import { findInvitation, loadOpenInvitations } from "@/db/queries/invitations";
import { loadPerson } from "@/db/queries/people";
import { loadSessions } from "@/db/queries/sessions";
import { acceptInvitation } from "@/db/writes/people/accept-invitation";
import { addFirstOwner } from "@/db/writes/people/add-person";
import { changePasswordOf } from "@/db/writes/people/change-password";
import { changeRole, endPerson } from "@/db/writes/people/change-person";
import { cost, hashPassword, passwordMatches } from "@/db/writes/people/hash-password";
import { endInvitation, invite, inviteToNewPassword } from "@/db/writes/people/invite";
import { endSessions } from "@/db/writes/people/sessions";
import { countTry, forgetTries } from "@/db/writes/people/sign-in-tries";
import { mostInARow, mostTries, windowMs } from "@/lib/people/sign-in-delay";
import { asDatabaseOwner } from "../../own-database";
import { sessionHeaders, signInHeaders, somebody, testPassword } from "./signed-in";

beforeAll(() => asDatabaseOwner("truncate people, sign_in_tries cascade"));
afterAll(closeDatabase);

const signedIn = (headers: Record<string, string>) => loadSignedIn(new Headers(headers));

describe("the first owner", () => {
  test("of four who come at once, one is the owner; of those who come later, none", async () => {
    const owner = { name: "Tamsin", email: "T@Shop.example", password: testPassword };
    const made = await Promise.all(Array.from({ length: 4 }, () => addFirstOwner(owner)));
    expect(made.filter(Boolean)).toHaveLength(1);
    expect(await addFirstOwner({ ...owner, email: "other@shop.example" })).toBe(false);
  });
});

describe("stored passwords", () => {
  test("take scrypt with N = 2^17, r = 8, p = 1, never twice the same, and only the whole of one matches", async () => {
    expect(cost).toMatchObject({ N: 131_072, r: 8, p: 1 });
    const [one, other] = await Promise.all([hashPassword(testPassword), hashPassword(testPassword)]);
    expect(one).toMatch(/^scrypt\$131072\$8\$1\$/);
    expect(one).not.toBe(other);
    expect(await passwordMatches(testPassword, one)).toBe(true);
    for (const wrong of [testPassword.slice(0, -1), `${testPassword}x`])
      expect(await passwordMatches(wrong, one)).toBe(false);
    for (const odd of ["", "plain", "scrypt$1$1$1$$", one.replace("scrypt", "none")])
      expect(await passwordMatches(testPassword, odd)).toBe(false);
  });
});

test("of eight passwords that come at once never more than two are reckoned with at a time, and all are answered", async () => {
  const { scrypt } = crypto;
  const under = { way: 0, most: 0 };
  const counted = (...[password, salt, length, settings, answer]: Parameters<typeof scrypt>) => {
    under.way += 1;
    under.most = Math.max(under.most, under.way);
    scrypt(password, salt, length, settings, (error, key) => {
      under.way -= 1;
      answer(error, key);
    });
  };
  crypto.scrypt = counted as typeof scrypt; // one of its forms, the one that is used
  syncBuiltinESMExports();
  try {
    const made = await Promise.all(Array.from({ length: 8 }, () => hashPassword(testPassword)));
    expect(new Set(made).size).toBe(8);
  } finally {
    crypto.scrypt = scrypt;
    syncBuiltinESMExports();
  }
  expect(under).toEqual({ way: 0, most: 2 });
});

describe("sessions", () => {
  test("the mark in the cookie is long, new at each signing in, and worth nothing with another seal", async () => {
    const person = await somebody("owner");
    const [one, two] = [await signInHeaders(person), await signInHeaders(person)];
    const token = one.cookie?.split("=")[1]?.split(".")[0] ?? "";
    expect(token.length).toBeGreaterThanOrEqual(32); // of letters and figures: more than 128 bits
    expect(one.cookie).not.toBe(two.cookie);
    expect((await signedIn(one))?.id).toBe(person.id);
    for (const cookie of ["", `${one.cookie?.slice(0, -6)}AAAAAA`, one.cookie?.replace(token, "x".repeat(32)) ?? ""])
      expect(await signedIn({ cookie })).toBeUndefined();
  });

  test.each([
    ["another role", (id: string) => changeRole(id, { role: "reader", technician: undefined })],
    ["being taken off", endPerson],
    ["being signed out everywhere", (id: string) => endSessions(id)],
  ] as const)("%s ends all of them at once", async (_, change) => {
    const person = await somebody("manager");
    const headers = await Promise.all([sessionHeaders(person), sessionHeaders(person)]);
    for (const each of headers) expect(await signedIn(each)).toBeDefined();
    await change(person.id);
    for (const each of headers) expect(await signedIn(each)).toBeUndefined();
  });

  test("a new password ends the others and keeps the one that asked; the old password is asked for", async () => {
    const person = await somebody("technician", "Kit");
    const [mine, other] = [await sessionHeaders(person), await sessionHeaders(person)];
    const keepSession = (await signedIn(mine))?.sessionId ?? "";
    const change = { password: "another lamp, another mill", keepSession };
    expect(await changePasswordOf(person.id, { ...change, current: "not this one at all" })).toBe(false);
    expect(await signedIn(other)).toBeDefined();
    expect(await changePasswordOf(person.id, { ...change, current: testPassword })).toBe(true);
    expect([await signedIn(mine), await signedIn(other)].map((each) => each?.id)).toEqual([person.id, undefined]);
    expect(await readOnly((db) => loadSessions(db, person.id))).toHaveLength(1);
  });

  test("half an hour without a request ends it at the desk, twelve hours end it everywhere", async () => {
    const [desk, phone] = [await somebody("owner"), await somebody("technician", "Kit")];
    const headers = { desk: await sessionHeaders(desk), phone: await sessionHeaders(phone) };
    await shift(31);
    expect([await signedIn(headers.desk), await signedIn(headers.phone)].map((each) => each?.id)).toEqual([
      undefined,
      phone.id,
    ]);
    await shift(12 * 60);
    expect(await signedIn(headers.phone)).toBeUndefined();
  });

  test("one that waits for its second factor opens nothing", async () => {
    const headers = await sessionHeaders(await somebody("owner"));
    await inTransaction((tx) => tx.rows(sql`update sessions set half_signed_in = true`));
    expect(await signedIn(headers)).toBeUndefined();
    expect((await loadSession(new Headers(headers)))?.half).toBe(true);
    await inTransaction((tx) => tx.rows(sql`update sessions set half_signed_in = false`));
  });
});

/** As if all sessions had begun, and been used last, so many minutes earlier. */
async function shift(minutes: number): Promise<void> {
  await inTransaction((tx) =>
    tx.rows(sql`
      update sessions set created_at = created_at - ${minutes} * interval '1 minute', expires_at = expires_at - ${minutes} * interval '1 minute',
        seen_at = coalesce(seen_at, created_at) - ${minutes} * interval '1 minute'`),
  );
}

describe("invitations", () => {
  const wren = {
    name: "Wren",
    email: "Wren@shop.example",
    role: "reader",
    technician: undefined,
    madeBy: "Tamsin",
  } as const;

  test("a link opens once, and only its hash is kept", async () => {
    const made = await invite(wren);
    const token = made.kind === "made" ? made.token : "";
    const stored = await readOnly((db) => db.rows(sql`select * from invitations`));
    expect(JSON.stringify(stored)).not.toContain(token);
    const used = await Promise.all([acceptInvitation(token, testPassword), acceptInvitation(token, testPassword)]);
    expect(used.filter((email) => email === "wren@shop.example")).toHaveLength(1);
    expect(await acceptInvitation(token, testPassword)).toBeUndefined();
    expect(await invite(wren)).toEqual({ kind: "here already" });
  });

  test("one that was taken back, replaced or grew a week old opens nothing", async () => {
    const tokens: string[] = [];
    for (let i = 0; i < 2; i++) {
      const made = await invite({ ...wren, email: "alder@shop.example" });
      if (made.kind === "made") tokens.push(made.token);
    }
    const [replaced = "", latest = ""] = tokens;
    const found = (token: string) => readOnly((db) => findInvitation(db, token));
    expect([await found(replaced), (await found(latest))?.email]).toEqual([undefined, "alder@shop.example"]);
    await inTransaction((tx) =>
      tx.rows(
        sql`update invitations set created_at = created_at - interval '8 days', expires_at = expires_at - interval '8 days'`,
      ),
    );
    expect(await found(latest)).toBeUndefined();
    const again = await invite({ ...wren, email: "alder@shop.example" });
    for (const { invitationId } of await readOnly(loadOpenInvitations)) await endInvitation(invitationId);
    expect(again.kind === "made" && (await found(again.token))).toBeUndefined();
  });

  test("a link to a new password lets somebody come back, ends their sessions and forgets wrong tries", async () => {
    const person = await somebody("manager");
    const before = await sessionHeaders(person);
    await endPerson(person.id);
    const made = await inviteToNewPassword(person.id, "Tamsin");
    expect(await acceptInvitation(made.kind === "made" ? made.token : "", "a wholly new long one")).toBe(person.email);
    expect(await signedIn(before)).toBeUndefined();
    expect((await readOnly((db) => loadPerson(db, person.id)))?.endedAt).toBeUndefined();
  });

  test("the only owner can neither be taken off nor made something else", async () => {
    await inTransaction((tx) => tx.rows(sql`update people set ended_at = now() where role = 'owner'`));
    const owner = await somebody("owner");
    expect(await endPerson(owner.id)).toBe("last owner");
    expect(await changeRole(owner.id, { role: "reader", technician: undefined })).toBe("last owner");
    const second = await somebody("owner");
    expect((await Promise.all([endPerson(owner.id), endPerson(second.id)])).sort()).toEqual(["changed", "last owner"]);
  });
});

describe("guessing", () => {
  const start = Date.UTC(2026, 9, 31, 9);
  const from = (address: string, email = "owner@shop.example", device?: string) => ({ email, address, device });

  test("two hundred from one place, four at once, are ten, and the place may go on a quarter of an hour later", async () => {
    let through = 0;
    for (let i = 0; i < 50; i++) {
      const verdicts = await Promise.all(Array.from({ length: 4 }, () => countTry(from("10.0.0.1"), start + i * 8000)));
      through += verdicts.filter(({ kind }) => kind === "go on").length;
    }
    expect(through).toBeLessThanOrEqual(mostTries);
    expect((await countTry(from("10.0.0.1"), start + 2 * windowMs)).kind).toBe("go on");
  });

  test("from two hundred places an account takes a hundred wrong tries in a row, and a known device still gets in", async () => {
    const email = "many@shop.example";
    let through = 0;
    for (let i = 0; i < 200; i++) if ((await countTry(from(`10.1.0.${i}`, email), start)).kind === "go on") through++;
    expect(through).toBe(mostInARow);
    expect(await countTry(from("10.2.0.1", email), start)).toEqual({ kind: "only from a known device" });
    expect((await countTry(from("10.2.0.1", email, "own phone"), start)).kind).toBe("go on");
    await forgetTries(from("10.2.0.1", email, "own phone"), start);
    expect((await countTry(from("10.2.0.1", email), start)).kind).toBe("go on");
  });

  test("an address that nobody here has is counted and slowed down as a known one is", async () => {
    const verdicts: string[][] = [];
    for (const email of [(await somebody("reader")).email, "stranger@nowhere.example"]) {
      const seen: string[] = [];
      for (let i = 0; i < 14; i++) seen.push(JSON.stringify(await countTry(from("10.3.0.1", email), start + i * 3000)));
      verdicts.push(seen);
    }
    expect(verdicts[0]).toEqual(verdicts[1]);
  });
});
