import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { expireBackups } from "@/db/backup/expire-backups";
import { finishedBackups } from "@/db/backup/finished-backups";

let folder = "";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "ohmsworth-expire-"));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const now = new Date("2026-03-01T03:00:00Z");
const nameOf = (madeAt: string) => `ohmsworth-${madeAt.slice(0, 19).replaceAll(":", "-")}Z`;

function backup(madeAt: string, finished = true): string {
  const name = nameOf(madeAt);
  mkdirSync(join(folder, name));
  const manifest = { format: "ohmsworth-backup/1", madeAt, schema: "0000_first_schema", tables: [], sequences: [] };
  if (finished) writeFileSync(join(folder, name, "manifest.json"), JSON.stringify(manifest));
  return name;
}

test("those over their days go; the rest, unfinished ones and what is not ours stay", async () => {
  const old = backup("2026-01-20T03:00:00.000Z"); // forty days
  const atLimit = backup("2026-01-25T03:00:00.000Z"); // thirty-five to the minute
  const young = backup("2026-02-28T03:00:00.000Z");
  const unfinished = backup("2026-01-01T03:00:00.000Z", false);
  mkdirSync(join(folder, "photos of the shop"));
  writeFileSync(join(folder, "erasures.jsonl"), "");
  expect(await expireBackups(folder, 35, now)).toEqual([old]);
  expect(readdirSync(folder).sort()).toEqual(
    ["erasures.jsonl", unfinished, atLimit, young, "photos of the shop"].sort(),
  );
});

test("the newest stays however old it is", async () => {
  const newest = backup("2025-02-01T03:00:00.000Z");
  await expireBackups(folder, 35, now);
  expect(readdirSync(folder)).toEqual([newest]);
});

test("after more days than that without any, old ones go with the second new one", async () => {
  const old = backup("2025-01-01T03:00:00.000Z");
  backup("2026-02-28T03:00:00.000Z");
  expect(await expireBackups(folder, 35, new Date("2026-02-28T03:05:00.000Z"))).toEqual([]);
  backup("2026-03-01T02:55:00.000Z");
  expect(await expireBackups(folder, 35, now)).toEqual([old]);
});

test("a backup that was made by a clock a year ahead takes none of the others with it", async () => {
  const days = ["2026-01-26", "2026-02-10", "2026-02-28"].map((madeOn) => backup(`${madeOn}T03:00:00.000Z`));
  const ahead = backup("2027-03-01T03:00:00.000Z");
  expect(await expireBackups(folder, 35, new Date("2027-03-01T03:05:00.000Z"))).toEqual([]);
  expect(readdirSync(folder).sort()).toEqual([...days, ahead].sort());
});

test("the newest that came to its end is the one that is tried", async () => {
  const old = backup("2026-01-20T03:00:00.000Z");
  const newest = backup("2026-02-27T03:00:00.000Z");
  backup("2026-02-28T03:00:00.000Z", false);
  expect((await finishedBackups(folder)).map(({ name }) => name)).toEqual([newest, old]);
});

test.each([0, -1, 1.5, Number.NaN])("%d days are refused", async (days) => {
  await expect(expireBackups(folder, days, now)).rejects.toThrow(RangeError);
});
