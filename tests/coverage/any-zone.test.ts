// The zone and clock of the server bear on no verdict: days are calendar days.
import { afterEach, expect, test } from "vitest";
import { answerCase } from "./answer-case";
import { loadCoverageCases } from "./coverage-case";

const cases = [...loadCoverageCases("coverage-cases"), ...loadCoverageCases("coverage-variants")];
const given = process.env.TZ;
afterEach(() => {
  if (given === undefined) delete process.env.TZ;
  else process.env.TZ = given;
});

const answers = () => JSON.stringify(cases.map((each) => answerCase(each)));

// Zones west and east of the date line, one with half an hour, and one that changes its clocks.
test.each([
  ["America/Los_Angeles", 480],
  ["Pacific/Kiritimati", -840],
  ["Asia/Kolkata", -330],
])("all cases are answered alike in %s", (zone, minutesWest) => {
  process.env.TZ = "UTC";
  const inUtc = answers();
  process.env.TZ = zone;
  expect(new Date("2026-01-15T12:00:00Z").getTimezoneOffset()).toBe(minutesWest); // the zone is really another one
  expect(answers()).toBe(inUtc);
});
