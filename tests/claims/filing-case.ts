import { day } from "@/lib/calendar/day";
import { assembleClaim } from "@/lib/claims/assemble-claim";
import type { FilingCase, FilingCheck, FilingCheckKey } from "@/lib/claims/checks/filing-case";
import { filingChecks } from "@/lib/claims/filing-checks";
import { emptyFile } from "@/lib/coverage/job-coverage-facts";
import type { JobRecord } from "@/lib/domain/job";
import type { Policy } from "@/lib/domain/policy";
import { claimCase, makerPolicy, pumpRecord } from "./claim-case";

/** A claim with every paper, of which nothing else on file speaks against anything. */
export function filingCase(
  record: JobRecord = fullRecord(),
  changes: Partial<FilingCase> = {},
  policy: Policy = makerPolicy,
): FilingCase {
  const given = claimCase(record, policy);
  const assembly = assembleClaim(given);
  if (assembly.kind === "blocked") throw new Error(assembly.reasons.map(({ sentence }) => sentence).join(" "));
  return {
    given,
    file: emptyFile,
    claim: assembly.claim,
    today: day("2025-03-20"),
    clock: { kind: "first" },
    others: [],
    parts: record.partLines.map(({ partNumber }) => ({
      partNumber,
      isInCatalogue: true,
      component: "drain_pump",
      supersededBy: undefined,
      timesOnModel: 3,
    })),
    serials: { shapes: [{ shape: shapeOf(record.unit.serial ?? ""), units: 40 }], alsoOn: [] },
    ...changes,
  };
}

const shapeOf = (serial: string) =>
  serial
    .replace(/[^A-Za-z0-9]/g, "")
    .replace(/[A-Za-z]/g, "A")
    .replace(/\d/g, "9");

export function fullRecord(): JobRecord {
  const record = pumpRecord();
  const receipt = record.attachments.find(({ subject }) => subject === "receipt");
  if (receipt === undefined) throw new Error("the record has a receipt");
  return {
    ...record,
    attachments: [...record.attachments, { ...receipt, id: "invoice", subject: "part_invoice" }],
    partLines: record.partLines.map((line) => ({
      ...line,
      unitCost: { cents: 4_150, currency: "USD" },
      distributor: "Ravel Supply",
      invoiceNumber: "INV-1",
      invoiceLine: "2",
    })),
  };
}

export function checkedBy(key: FilingCheckKey, filing: FilingCase): FilingCheck {
  const check = filingChecks(filing).find((each) => each.key === key);
  if (check === undefined) throw new Error(`no check ${key}`);
  return check;
}
