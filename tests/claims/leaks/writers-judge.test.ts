import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";

const root = join(__dirname, "../../../db/writes");

/** Everything that a decision about covered work looks at, as SQL names it and as drizzle does. */
const judged = {
  jobs: "jobs",
  units: "units",
  part_lines: "partLines",
  readings: "readings",
  attachments: "attachments",
  contracts: "contracts",
  unit_facts: "unitFacts",
  repair_spans: "repairSpans",
  expected_ranges: "expectedRanges",
  policies: "policies",
  claims: "claims",
  claim_lines: "claimLines",
} as const;

/** Writers that leave the judging to whoever calls them; each is used by no one else. */
const leftToCaller: Readonly<Record<string, string>> = {
  "bulk/first-jobs.ts": "store-import.ts, which marks the units of every staged row",
  "claims/append-event.ts": "claims/act-on-claim.ts and the posting of lists, which judge when all of it is written",
  "claims/send-claim.ts": "claims/act-on-claim.ts, which judges what its transaction did",
  "kinds/units-of-jobs.ts": "store-import.ts, which marks the units of every staged row",
  "refresh-counts.ts": "every writer that counts; it writes the day of service, on which no cover rests",
  "sheets/insert-part-lines.ts": "sheets/close-job.ts",
  "sheets/insert-readings.ts": "sheets/close-job.ts and sheets/keep-answer.ts",
};

const files = readdirSync(root, { recursive: true, encoding: "utf8" }).filter((name) => name.endsWith(".ts"));
const textOf = (name: string) => readFileSync(join(root, name), "utf8");

function writesWhatIsJudged(text: string): boolean {
  const tables = Object.keys(judged).join("|");
  const names = Object.values(judged).join("|");
  return (
    new RegExp(`(insert into|update|delete from) (${tables})\\b`).test(text) ||
    new RegExp(`\\.(insert|update|delete)\\((${names})\\)`).test(text)
  );
}

const judges = /\b(refreshUnclaimed|markStagedUnits|markUnitsOfModels|markAllUnits)\(|insert into units_to_judge/;

test.each(files.filter((name) => writesWhatIsJudged(textOf(name))))(
  "%s has covered work judged anew, or names who does",
  (name) => {
    expect(judges.test(textOf(name)) || name in leftToCaller).toBe(true);
  },
);

test("no writer is excused that is gone, or that judges by itself", () => {
  const needless = Object.keys(leftToCaller).filter(
    (name) => !files.includes(name) || judges.test(textOf(name)) || !writesWhatIsJudged(textOf(name)),
  );
  expect(needless).toEqual([]);
});

test("there are writers to look at", () => {
  expect(files.filter((name) => writesWhatIsJudged(textOf(name))).length).toBeGreaterThan(10);
});
