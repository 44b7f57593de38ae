import { expect, test } from "vitest";
import { day } from "@/lib/calendar/day";
import type { CoverageFacts } from "@/lib/coverage/coverage-facts";
import { decideCoverage } from "@/lib/coverage/decide-coverage";
import { decideFiling } from "@/lib/coverage/decide-filing";
import { knownDay } from "@/lib/coverage/known-date";
import { noDrainVerdict } from "@/lib/evidence/no-drain-verdict";
import { makers } from "@/synthetic-data/models";
import { type NoDrainJob, noDrainJobs, noDrainModel, noDrainModelNumber } from "@/synthetic-data/no-drain-jobs";
import { makerPolicies } from "@/synthetic-data/policies";

const today = day("2026-10-31");
const jobs = noDrainJobs(today);
const policies = makerPolicies();

/** What coverage is told of the job; only days that the demo's register gives. */
function facts(job: NoDrainJob): CoverageFacts {
  const { component, symptom, cause } = job.found;
  return {
    unit: {
      maker: makers[noDrainModel.maker].name,
      model: noDrainModelNumber,
      productType: "front_load_washer",
      serial: job.serial,
      serialRemoved: false,
      use: "household",
      territory: "US-OH",
      dates: {
        purchase: knownDay(job.soldOn, "receipt"),
        delivery: knownDay(job.installedOn, undefined),
        installation: knownDay(job.installedOn, undefined),
      },
      owner: { number: 1, acquiredOn: undefined, transferRegisteredOn: undefined },
      exchangedOn: undefined,
    },
    reported: job.requestedOn,
    reportedIsRecorded: true,
    firstVisit: job.visitedOn,
    completed: job.completedOn,
    component,
    symptom,
    cause,
    kind: "repair",
    authorizationNumber: undefined,
    contracts: [],
    replacedPartFittedOn: undefined,
    previousRepairOn: undefined,
    outForRepair: [],
  };
}

// By hand, from the invented terms: whole unit 1 year from purchase, motors and pumps 5 years parts, electronics 2 years parts.
test.each([
  ["Kinked hose", "not_covered", "not_covered", "none"],
  ["Suds", "not_covered", "not_covered", "none"],
  ["Object in the trap", "not_covered", "not_covered", "none"],
  ["Broken impeller", "covered", "covered", "last_day"],
  ["Open winding", "covered", "covered", "none"],
  ["Winding in range but seized", "covered", "not_covered", "day_after"],
  ["Hose blocked past the pump", "not_covered", "not_covered", "none"],
  ["No output from the board, load good", "covered", "not_covered", "none"],
  ["Harness open between board and pump", "covered", "covered", "none"],
  ["Nothing found", "not_covered", "not_covered", "none"],
])("%s: parts %s, labour %s, labour boundary %s", (name, parts, labour, boundary) => {
  const job = jobs.find(({ found }) => found.name === name);
  if (job === undefined) throw new Error(`no job ${name}`);
  const { items } = decideCoverage(facts(job), policies);
  expect([items.parts.verdict, items.labour.verdict]).toEqual([parts, labour]);
  if ("boundary" in items.labour) expect(items.labour.boundary.kind).toBe(boundary);
});

test("every one can still be filed today, the harness on the last day", () => {
  const clock = policies[0]?.clocks.filing;
  if (clock === undefined) throw new Error("the first policy has a filing clock");
  const filing = jobs.map(({ completedOn }) => decideFiling({ clock, completedOn, actOn: today, holidays: new Set() }));
  expect(filing.map(({ kind }) => kind)).toEqual(Array.from({ length: 10 }, () => "in_window"));
  expect(filing[8]).toMatchObject({ daysLeft: 0 });
});

test("the readings, judged by the model's own range, give the verdict of the case", () => {
  for (const { found } of jobs) {
    const range = {
      check: "pump_winding",
      low: 12,
      high: 18,
      unit: "ohm",
      condition: undefined,
      source: "sheet",
      mark: "invented for the demo",
    } as const;
    expect(noDrainVerdict(found.readings, [range]).kind).toBe(found.expectedVerdict);
  }
});

test("days run forward in every job, and the numbers begin at J-10001", () => {
  for (const job of jobs) {
    const days = [job.soldOn, job.installedOn, job.requestedOn, job.visitedOn, job.completedOn];
    expect([...days].sort()).toEqual(days);
  }
  expect(jobs.map(({ jobNumber }) => jobNumber)).toEqual(
    Array.from({ length: 10 }, (_, index) => `J-${10_001 + index}`),
  );
});
