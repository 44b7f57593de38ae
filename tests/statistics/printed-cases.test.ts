import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";

// The published worked examples of tests/reference/stat-cases.json are met case by case in the tests of their subject, through
// `expectPrinted`, which asks for every printed quantity and says how its print is known. Here: that none is left out.

interface Case {
  readonly id: string;
  readonly source: string;
  readonly verified_by: string;
  readonly expected: readonly { readonly quantity: string; readonly how: string }[];
}

const text = readFileSync(fileURLToPath(new URL("../reference/stat-cases.json", import.meta.url)), "utf8");
const { cases } = JSON.parse(text) as { cases: readonly Case[] }; // the file's shape is checked below
const folder = fileURLToPath(new URL(".", import.meta.url));
const tests = readdirSync(folder, { recursive: true, encoding: "utf8" })
  .filter((name) => name.endsWith(".test.ts"))
  .map((name) => readFileSync(`${folder}${name}`, "utf8"));

/**
 * G03 gives 0.3276 and 0.3413, recomputed from parameters short of the maximum; no print was found. The maximum gives
 * 0.32851 and 0.34221 (R 4.2.2), and anderson-darling.test.ts holds us to those.
 */
const wrong = ["G03"];

test("there are fifty", () => expect(cases.length).toBe(50));

describe.each(cases)("$id", ({ id, source, expected }) => {
  test("has its source, and says of each number whether it was read, remembered or recomputed", () => {
    expect(source.length).toBeGreaterThan(10);
    expect(expected.length).toBeGreaterThan(0);
    for (const { how } of expected) expect(["read", "memory", "recomputed"]).toContain(how);
  });

  test("stands in a test", () => {
    const met = wrong.includes(id) ? new RegExp(`\\b${id}\\b`) : new RegExp(`expectPrinted\\(\\s*"${id}"`);
    expect(tests.some((one) => met.test(one))).toBe(true);
  });
});
