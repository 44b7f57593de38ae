import { expect, test } from "vitest";
import { neededParts, type SymptomPart } from "@/lib/sheets/symptom-parts";

const line = (partNumber: string, jobs: number, part: Partial<SymptomPart> = {}): SymptomPart => ({
  partNumber,
  description: "",
  jobs,
  pieces: jobs,
  modelId: 1,
  model: "A",
  ageBand: "older",
  season: "Jan–Mar",
  ...part,
});

// By hand: 12 of 40 jobs is 30 %; Wilson's limits at 95 %: (0.3 + 0.048 ± 1.96·sqrt(0.21/40 + 0.0006))/1.09604 = 0.1807 and 0.4543.
test("parts of all groups are added up and held against the jobs in view, those of most jobs first", () => {
  const parts = neededParts(
    [line("P-1", 5), line("P-2", 3), line("P-1", 7, { model: "B", description: "Drain pump", pieces: 9 })],
    40,
  );
  expect(parts.map(({ partNumber, description, pieces }) => [partNumber, description, pieces])).toEqual([
    ["P-1", "Drain pump", 14],
    ["P-2", "", 3],
  ]);
  expect(parts[0]?.share).toMatchObject({ point: 0.3, lo: expect.closeTo(0.1807, 3), hi: expect.closeTo(0.4543, 3) });
});

test("no part is an empty list", () => {
  expect(neededParts([], 3)).toEqual([]);
});
