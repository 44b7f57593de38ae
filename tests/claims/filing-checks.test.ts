import { describe, expect, test } from "vitest";
import { addDays, day } from "@/lib/calendar/day";
import { filingCheckTitles, type OtherClaim } from "@/lib/claims/checks/filing-case";
import { serialShape } from "@/lib/claims/checks/serial";
import { filingChecks } from "@/lib/claims/filing-checks";
import type { JobRecord } from "@/lib/domain/job";
import { makerPolicy } from "./claim-case";
import { checkedBy, filingCase, fullRecord } from "./filing-case";

// What is checked: a published maker's list of 18 rejection reasons (1996) and a public trade forum, as the trade
// handbook gives them. The order is its judgement: common practice, no source.

const withJob = (job: Partial<JobRecord["job"]>): JobRecord => {
  const record = fullRecord();
  return { ...record, job: { ...record.job, ...job } };
};
const withUnit = (unit: Partial<JobRecord["unit"]>): JobRecord => {
  const record = fullRecord();
  return { ...record, unit: { ...record.unit, ...unit } };
};
const withLine = (line: Partial<JobRecord["partLines"][number]>): JobRecord => {
  const record = fullRecord();
  return { ...record, partLines: record.partLines.map((each) => ({ ...each, ...line })) };
};
const without = (subject: string): JobRecord => {
  const record = fullRecord();
  return { ...record, attachments: record.attachments.filter((each) => each.subject !== subject) };
};

test("the checks come in the order of the rejections, and a claim with every paper fails none", () => {
  const checks = filingChecks(filingCase());
  expect(checks.map(({ key }) => key)).toEqual(Object.keys(filingCheckTitles));
  expect(checks.filter(({ verdict }) => verdict === "failed")).toEqual([]);
});

test("a failed check always says what to do", () => {
  const filing = filingCase(withJob({ symptom: undefined, complaint: "" }));
  for (const check of filingChecks(filing))
    if (check.verdict !== "passed") expect(check.fixes.length).toBeGreaterThan(0);
});

describe("part against its invoice line", () => {
  test.each([
    ["distributor", { distributor: undefined }],
    ["invoice number", { invoiceNumber: undefined }],
    ["cost", { unitCost: { cents: 0, currency: "USD" } as const }],
  ])("fails without the %s", (word, line) => {
    const check = checkedBy("part_invoice", filingCase(withLine(line)));
    expect(check.verdict).toBe("failed");
    expect(check.fixes.join()).toContain(word);
  });

  test("can't be told without the paper, nor for a number that the catalogue lacks or has superseded", () => {
    expect(checkedBy("part_invoice", filingCase(without("part_invoice"))).verdict).toBe("cannot_tell");
    expect(checkedBy("part_invoice", filingCase(fullRecord(), { parts: [] })).verdict).toBe("cannot_tell");
    const { parts } = filingCase();
    const newer = parts.map((part) => ({ ...part, supersededBy: "P-200" }));
    expect(checkedBy("part_invoice", filingCase(fullRecord(), { parts: newer })).fixes.join()).toContain("P-200");
  });
});

describe("purchase date", () => {
  test("fails without the receipt, and before the manufacture; on the day of manufacture it passes", () => {
    expect(checkedBy("purchase_date", filingCase(without("receipt"))).verdict).toBe("failed");
    const sold = day("2024-09-01");
    expect(checkedBy("purchase_date", filingCase(withUnit({ madeFrom: sold }))).verdict).toBe("passed");
    const later = filingCase();
    const record = { ...later.given.record, unit: { ...later.given.record.unit, madeFrom: addDays(sold, 1) } };
    const check = checkedBy("purchase_date", { ...later, given: { ...later.given, record } });
    expect(check.verdict).toBe("failed");
  });

  test("fails where the unit was registered before it was bought", () => {
    expect(checkedBy("purchase_date", filingCase(withUnit({ registeredOn: day("2024-08-31") }))).verdict).toBe(
      "failed",
    );
  });
});

describe("serial against model", () => {
  test("letters and digits make its shape", () => {
    expect(serialShape("ab-12 34c")).toBe("AA9999A");
  });

  test("fails where it is written as no other of the model, and where it stands on another model", () => {
    const shapes = [{ shape: "AAA99999999", units: 40 }];
    expect(checkedBy("serial", filingCase(fullRecord(), { serials: { shapes, alsoOn: [] } })).verdict).toBe("failed");
    const { serials } = filingCase();
    const twice = filingCase(fullRecord(), { serials: { ...serials, alsoOn: ["FW9000"] } });
    expect(checkedBy("serial", twice).fixes.join()).toContain("FW9000");
  });

  test("can't be told without the plate's photo, or with hardly any unit to compare with", () => {
    expect(checkedBy("serial", filingCase(without("plate"))).verdict).toBe("cannot_tell");
    const few = filingCase(fullRecord(), { serials: { shapes: [], alsoOn: [] } });
    expect(checkedBy("serial", few).verdict).toBe("cannot_tell");
  });
});

// A year from 1 Sep 2024, the day of purchase not counted: the last covered day is 1 Sep 2025.
test("a term that ends between call and completion is said on both days, and the policy's own day decides", () => {
  const record = withJob({
    requestedOn: day("2025-08-30"),
    firstVisitOn: day("2025-09-01"),
    completedOn: day("2025-09-03"),
  });
  const filing = filingCase(record, { today: day("2025-09-10") }, { ...makerPolicy, clocks: longClock });
  const check = checkedBy("term", filing);
  expect(check.verdict).toBe("cannot_tell");
  expect(check.fixes.join()).toContain("the completion");
});
const longClock = {
  ...makerPolicy.clocks,
  filing: { ...makerPolicy.clocks.filing, within: { n: 2, unit: "year" } as const },
};

describe("claimed before", () => {
  const other: OtherClaim = {
    claimNumber: "C-1",
    jobNumber: "J-other",
    payer: "Halvorsen",
    isSameUnit: false,
    completedOn: day("2024-01-01"),
    items: ["parts"],
    invoiceLines: [{ invoiceNumber: "INV-1", invoiceLine: "2", partNumber: "other" }],
  };
  const job = () => fullRecord().job;

  test("one invoice line pays once; another line of the same invoice is another part", () => {
    const check = checkedBy("repeat", filingCase(fullRecord(), { others: [other] }));
    expect(check).toMatchObject({ verdict: "failed", place: { kind: "claim", claimNumber: "C-1" } });
    const next = { ...other, invoiceLines: [{ invoiceNumber: "INV-1", invoiceLine: "3", partNumber: "other" }] };
    expect(checkedBy("repeat", filingCase(fullRecord(), { others: [next] })).verdict).toBe("passed");
  });

  test("the same payer, unit and completion day is a duplicate, whatever the job number; another day is not", () => {
    const same = { ...other, isSameUnit: true, completedOn: job().completedOn, invoiceLines: [] };
    expect(checkedBy("repeat", filingCase(fullRecord(), { others: [same] })).verdict).toBe("failed");
    const before = { ...same, completedOn: addDays(job().completedOn, -200) };
    expect(checkedBy("repeat", filingCase(fullRecord(), { others: [before] })).verdict).toBe("passed");
  });

  test("parts alone beside labour alone on one job are a legal pair", () => {
    const pair = {
      ...other,
      jobNumber: job().jobNumber,
      isSameUnit: true,
      completedOn: job().completedOn,
      invoiceLines: [],
    };
    const filing = filingCase(fullRecord(), { others: [{ ...pair, items: ["parts"] }] });
    const labour = filing.claim.lines.filter(({ item }) => item === "labour");
    expect(checkedBy("repeat", { ...filing, claim: { ...filing.claim, lines: labour } }).verdict).toBe("passed");
    expect(checkedBy("repeat", filing).verdict).toBe("failed");
  });
});

describe("clock", () => {
  test("passes on the last day of the window and fails the day after", () => {
    const last = addDays(fullRecord().job.completedOn, 30);
    expect(checkedBy("clock", filingCase(fullRecord(), { today: last })).verdict).toBe("passed");
    expect(checkedBy("clock", filingCase(fullRecord(), { today: addDays(last, 1) })).verdict).toBe("failed");
  });

  test("a corrected claim runs on its own clock, whatever became of the filing window", () => {
    const again = { kind: "again", resubmitBy: day("2025-08-01"), mayFileAgain: true } as const;
    expect(checkedBy("clock", filingCase(fullRecord(), { today: day("2025-08-01"), clock: again })).verdict).toBe(
      "passed",
    );
    expect(checkedBy("clock", filingCase(fullRecord(), { today: day("2025-08-02"), clock: again })).verdict).toBe(
      "failed",
    );
    const spent = { ...again, mayFileAgain: false };
    expect(checkedBy("clock", filingCase(fullRecord(), { clock: spent })).verdict).toBe("failed");
  });
});

describe("codes", () => {
  test("a part of another component fails; one never fitted on the model can't be told", () => {
    expect(checkedBy("codes", filingCase(withLine({ component: "control_board" }))).verdict).toBe("failed");
    const parts = filingCase().parts.map((part) => ({ ...part, timesOnModel: 0 }));
    expect(checkedBy("codes", filingCase(fullRecord(), { parts })).verdict).toBe("cannot_tell");
  });
});

test("over a limit without a number the authorization fails, under it none is needed", () => {
  const limit = (partsOverCents: number) => ({
    ...makerPolicy,
    authorization: { ...makerPolicy.authorization, partsOverCents },
  });
  expect(checkedBy("authorization", filingCase(fullRecord(), {}, limit(4_149))).verdict).toBe("failed");
  expect(checkedBy("authorization", filingCase(fullRecord(), {}, limit(4_150))).verdict).toBe("passed");
});

test("a word that points to an exclusion is asked about and stops nothing", () => {
  const check = checkedBy("wording", filingCase(withJob({ correction: "Replaced pump and cleaned the filter." })));
  expect(check.verdict).toBe("cannot_tell");
  expect(check.fixes.join()).toContain("cleaned");
});

test.each([
  ["the symptom", { symptom: undefined }],
  ["the complaint", { complaint: " " }],
  ["the correction", { correction: "" }],
])("a claim without %s fails its required fields", (words, job) => {
  const check = checkedBy("required_fields", filingCase(withJob(job)));
  expect(check.verdict).toBe("failed");
  expect(check.fixes.join()).toContain(words);
});

test("a photo that the failure asks for and is not there fails the documents", () => {
  expect(checkedBy("documents", filingCase(without("plate"))).verdict).toBe("failed");
});
