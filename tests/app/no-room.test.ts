import { existsSync, writeFileSync } from "node:fs";
import { DatabaseError } from "pg";
import { expect, test } from "vitest";
import { isNoRoom, noRoom } from "@/app/_http/no-room";

/** What the system itself throws, where it has a file that is always full. */
function fullDisk(): unknown {
  if (!existsSync("/dev/full")) return Object.assign(new Error("no space"), { code: "ENOSPC" });
  try {
    writeFileSync("/dev/full", "x");
  } catch (error) {
    return error;
  }
  return undefined;
}

test("a full disk is told from other failures, however deep it stands, and answered with 507 and what to do", async () => {
  const ofDatabase = new DatabaseError("could not extend file", 1, "error");
  ofDatabase.code = "53100";
  expect(isNoRoom(fullDisk())).toBe(true);
  expect(isNoRoom(new Error("Failed query", { cause: ofDatabase }))).toBe(true);
  expect(
    [new Error("x"), Object.assign(new Error("x"), { code: "EACCES" }), "ENOSPC", undefined].map(isNoRoom),
  ).toEqual([false, false, false, false]);
  const answer = noRoom();
  expect([answer.status, await answer.json()]).toMatchObject([
    507,
    { title: "No room on the disk", detail: expect.stringMatching(/^Nothing was stored/) },
  ]);
});
