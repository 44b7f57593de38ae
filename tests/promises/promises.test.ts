import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { heldBy, notHeld, wholeRuns } from "./held-by";
import { type PromiseKey, promises } from "./promises";

const root = join(import.meta.dirname, "..", "..");
const keys = Object.keys(promises) as PromiseKey[]; // the keys of the table, which it lists itself

test.each(keys.flatMap((key) => (heldBy[key] ?? []).map(({ file, test: title }) => [key, title, file] as const)))(
  "%s is held by “%s” in %s",
  (_, title, file) => {
    expect(existsSync(join(root, file)), file).toBe(true);
    expect(readFileSync(join(root, file), "utf8")).toContain(title);
  },
);

/** `npx vitest run --config tests/vitest.config.ts tests/promises -u` writes it anew. */
test("the table of promises says which of them a test holds, and which none", async () => {
  const lines = keys.map((key) => {
    const tests = (heldBy[key] ?? []).map(
      ({ file, test: title }) => `${title === "test" ? "all" : `“${title}”`} in ${file}`,
    );
    const held = [
      ...(tests.length === 0 ? ["no test yet"] : tests),
      ...(wholeRuns[key] === undefined ? [] : [`${tests.length === 0 ? "by hand" : "whole"}: \`${wholeRuns[key]}\``]),
      ...(notHeld[key] === undefined ? [] : [`not yet: ${notHeld[key]}`]),
    ];
    return `| ${key} | ${promises[key]} | ${held.join("<br>")} |`;
  });
  const kept = keys.filter((key) => heldBy[key] !== undefined).length;
  const text = [
    "# What is promised, and the test that breaks first",
    "",
    `Written from promises.ts and held-by.ts; ${kept} of ${keys.length} promises have a test, ${keys.filter((key) => heldBy[key] !== undefined && notHeld[key] !== undefined).length} of them known not to try all that they say.`,
    "",
    "| | promise | held by |",
    "|---|---|---|",
    ...lines,
    "",
  ].join("\n");
  await expect(text).toMatchFileSnapshot("./promises.md");
});
