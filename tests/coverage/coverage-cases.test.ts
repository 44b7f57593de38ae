// Dated cases worked by hand and recomputed by two independent programs; each names its rule and its source.
// Statutory rows are for information: local law and the policy wording decide.
import { describe, expect, test } from "vitest";
import { answerCase } from "./answer-case";
import { type Loose, loadCoverageCases } from "./coverage-case";

const cases = loadCoverageCases("coverage-cases");
const variants = loadCoverageCases("coverage-variants");

describe.each([...cases, ...variants])("$id $title [$source]", (given) => {
  const answer = answerCase(given);

  test.each(Object.entries(given.expect))(
    `%s is as the rule says: ${given.rule.replaceAll("%", "%%")}`,
    (field, expected) => {
      expect(Object.keys(answer)).toContain(field);
      expect(comparable(field, answer[field], expected)).toEqual(normal(expected));
    },
  );
});

test("the file holds as many cases as it says, so none is skipped", () => {
  expect(new Set(cases.map((given) => given.id)).size).toBe(cases.length);
  expect(cases.length).toBeGreaterThanOrEqual(50);
  expect(new Set(variants.map((given) => given.id)).size).toBe(variants.length);
  expect(variants.length).toBeGreaterThanOrEqual(60);
});

/** A case that names only some pay items asks only about those. */
function comparable(field: string, answer: unknown, expected: unknown): unknown {
  if (field !== "pays") return normal(answer);
  return Object.fromEntries(Object.keys(expected as Loose).map((item) => [item, (answer as Loose)[item]])); // pays is an object
}

/** "no such date" and "no_such_date" are one reason. */
function normal(value: unknown): unknown {
  return typeof value === "string" ? value.replaceAll("_", " ") : value;
}
