import { expect, test } from "vitest";
import { illWords } from "@/app/_health/ill-words";

test.each([
  [{ database: true, schema: true, disk: true }, []],
  [{ database: false, schema: false, disk: true }, ["database does not answer"]], // nobody can tell its version
  [{ database: true, schema: false, disk: true }, ["not of this version"]],
  [{ database: true, schema: false, disk: false }, ["not of this version", "hardly any room"]],
  [{ database: true, schema: true, disk: false }, ["hardly any room"]],
])("of a site that is %j it is told what it lacks", (readiness, wanted) => {
  const told = illWords(readiness);
  expect(told).toHaveLength(wanted.length);
  for (const [n, words] of wanted.entries()) expect(told[n]).toContain(words);
});
