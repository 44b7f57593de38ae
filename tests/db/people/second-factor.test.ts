import { base32 } from "@better-auth/utils/base32";
import { createOTP } from "@better-auth/utils/otp";
import { afterAll, beforeEach, expect, test, vi } from "vitest";
import { beginAuthenticator, confirmAuthenticator, matchesAuthenticator } from "@/app/_people/authenticator";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { loadSecondFactor } from "@/db/queries/second-factor";
import { somebody, type TestPerson } from "./signed-in";

const start = Date.UTC(2026, 9, 31, 9, 0, 5);
const halfMinute = 30_000;
let person: TestPerson;
let secret = "";

beforeEach(async () => {
  vi.useFakeTimers({ toFake: ["Date"], now: start });
  person ??= await somebody("owner");
});
afterAll(async () => {
  vi.useRealTimers();
  await closeDatabase();
});

const codeAt = (ms: number) => createOTP(secret).hotp(Math.floor(ms / halfMinute));

// RFC 6238, appendix B, SHA-1, the last six of the eight digits printed there.
test.each([
  [59, "287082"],
  [1_111_111_109, "081804"],
  [1_234_567_890, "005924"],
  [20_000_000_000, "353130"],
])("at %i s the published secret gives %s", async (seconds, code) => {
  expect(await createOTP("12345678901234567890").hotp(Math.floor(seconds / 30))).toBe(code);
});

test("it is set up by the first right code, kept sealed, and each code of it opens once", async () => {
  const begun = await beginAuthenticator(person);
  secret = new TextDecoder().decode(base32.decode(begun.secret));
  expect(begun.address).toMatch(/^otpauth:\/\/totp\/Ohmsworth:/);
  expect((await readOnly((db) => loadSecondFactor(db, person.id)))?.sealedSecret).not.toContain(secret);
  expect(await confirmAuthenticator(person, "000000")).toBeUndefined();
  const first = await codeAt(start);
  const codes = await confirmAuthenticator(person, first);
  expect(new Set(codes).size).toBe(10);
  expect(await matchesAuthenticator(person.id, first)).toBe(false);
  vi.setSystemTime(start + halfMinute);
  const next = await codeAt(start + halfMinute);
  const both = await Promise.all([matchesAuthenticator(person.id, next), matchesAuthenticator(person.id, next)]);
  expect(both.sort()).toEqual([false, true]);
  expect(await matchesAuthenticator(person.id, first)).toBe(false);

  const recovery = codes?.[3] ?? "";
  expect(await matchesAuthenticator(person.id, recovery)).toBe(false);
  const written = recovery.toLowerCase().replaceAll("-", " ");
  expect(await matchesAuthenticator(person.id, written, { orRecoveryCode: true })).toBe(true);
  expect(await matchesAuthenticator(person.id, recovery, { orRecoveryCode: true })).toBe(false);
  expect((await readOnly((db) => loadSecondFactor(db, person.id)))?.recoveryCodesLeft).toBe(9);
});

test("a phone may be half a minute fast or slow, and not a whole one", async () => {
  const later = start + 100 * halfMinute;
  vi.setSystemTime(later);
  for (const off of [-2, 2])
    expect(await matchesAuthenticator(person.id, await codeAt(later + off * halfMinute))).toBe(false);
  for (const off of [-1, 0, 1])
    expect(await matchesAuthenticator(person.id, await codeAt(later + off * halfMinute))).toBe(true);
});

test("while the clock is a year ahead or a day behind no code of the phone opens, and none opens twice when it is put right", async () => {
  const right = start + 1000 * halfMinute;
  const used = await codeAt(right);
  vi.setSystemTime(right);
  expect(await matchesAuthenticator(person.id, used)).toBe(true);
  for (const by of [365 * 86_400_000, -86_400_000]) {
    vi.setSystemTime(right + by);
    for (const code of [used, await codeAt(right + halfMinute)])
      expect(await matchesAuthenticator(person.id, code)).toBe(false);
  }
  vi.setSystemTime(right + halfMinute);
  expect(await matchesAuthenticator(person.id, used)).toBe(false);
  expect(await matchesAuthenticator(person.id, await codeAt(right + halfMinute))).toBe(true);
});
