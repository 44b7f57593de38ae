import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { setByStarter, settingsShape } from "@/app/_settings/settings";

const root = join(import.meta.dirname, "..", "..");
const hosting = (name: string) => readFileSync(join(root, "app", "hosting", name), "utf8");

test("every setting has its line in the list for those who host it, and the list names no other", () => {
  const listed = [...hosting("README.md").matchAll(/^\| `([A-Z_]+)`/gm)].map(([, name]) => name);
  const known = ["DATABASE_URL", ...Object.keys(settingsShape).filter((name) => !setByStarter.includes(name))];
  expect(listed).toEqual(known);
});

test.each(["Containerfile", "ohmsworth.service"])(
  "%s starts a program that is there, with settings that are",
  (name) => {
    const text = hosting(name);
    const programs = [...text.matchAll(/app\/commands\/[a-z/-]+\.mjs/g)].map(([path]) => path);
    expect(programs.length).toBeGreaterThan(0);
    expect(programs.filter((path) => !existsSync(join(root, path)))).toEqual([]);
    const set = [...text.matchAll(/\b(OHMSWORTH_[A-Z]+)=/g)].map(([, setting]) => setting ?? "");
    expect(set.filter((setting) => !(setting in settingsShape))).toEqual([]);
  },
);

test("a service leaves more time for stopping than the starter takes before it ends the server by force", () => {
  const patience = Number(/^TimeoutStopSec=(\d+)$/m.exec(hosting("ohmsworth.service"))?.[1]);
  const starter = readFileSync(join(root, "app/commands/start/serve.mjs"), "utf8");
  const longest = Number(/longestStopMs = ([\d_]+)/.exec(starter)?.[1]?.replaceAll("_", ""));
  expect(longest).toBeGreaterThan(0);
  expect(patience * 1000).toBeGreaterThan(2 * longest);
});
