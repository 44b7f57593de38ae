import { day } from "@/lib/calendar/day";
import type { ClosedJob, JobRecord, PartLine } from "@/lib/domain/job";
import type { ExpectedRange } from "@/lib/domain/reading";
import type { Unit } from "@/lib/domain/unit";
import { checkFindings } from "@/lib/evidence/check-evidence";
import type { EvidenceCheck } from "@/lib/evidence/evidence-check";

/**
 * The evidence of many jobs, as far as a leak looks at it: the words of the story are not searched for exclusions. A job on
 * which nothing was read and no picture taken differs from its like only in what failed and what was fitted, so the
 * check is made once for each kind of them, on a job that has nothing else to look at.
 * Checked: tests/claims/leaks/evidence-of-leaks.test.ts, against checking every job.
 */
export function evidenceOfLeaks(): (record: JobRecord, ranges: readonly ExpectedRange[]) => EvidenceCheck {
  const known = new Map<string, EvidenceCheck>();
  return (record, ranges) => {
    if (record.readings.length > 0 || record.attachments.length > 0) return checkFindings(record, ranges);
    const key = kindKey(record);
    const found = known.get(key);
    if (found !== undefined) return found;
    const checked = checkFindings(onlyKind(record), []);
    known.set(key, checked);
    return checked;
  };
}

/** Everything that `onlyKind` lets through. */
function kindKey(record: JobRecord): string {
  const { component, failureMode, cause } = record.job;
  let key = `${record.unit.productType}|${component}|${failureMode}|${cause}|${authorization(record)}`;
  for (const line of record.partLines)
    key += `|${line.line} ${line.role} ${line.component} ${partNumber(line)} ${invoiceNumber(line)}`;
  return key;
}

/** The job without anything that its kind does not name: the check of one can't differ from that of another. */
function onlyKind(record: JobRecord): JobRecord {
  const { component, failureMode, cause } = record.job;
  return {
    job: { ...noJob, component, failureMode, cause, authorizationNumber: authorization(record) },
    unit: { ...noUnit, productType: record.unit.productType },
    partLines: record.partLines.map((line) => ({
      ...noLine,
      line: line.line,
      role: line.role,
      component: line.component,
      partNumber: partNumber(line),
      invoiceNumber: invoiceNumber(line),
    })),
    readings: [],
    attachments: [],
    earlier: [],
  };
}

// Which number it is makes no difference, only whether there is one.
function authorization({ job }: JobRecord): string | undefined {
  return job.authorizationNumber === undefined || job.authorizationNumber.trim() === "" ? undefined : "given";
}

function partNumber(line: PartLine): string {
  return line.partNumber === "" ? "" : "given";
}

function invoiceNumber(line: PartLine): string | undefined {
  return line.invoiceNumber === undefined ? undefined : "given";
}

const noJob: ClosedJob = {
  jobNumber: "",
  status: "closed",
  requestedOn: undefined,
  firstVisitOn: undefined,
  diagnosedOn: undefined,
  partsOrderedOn: undefined,
  partsReceivedOn: undefined,
  completedOn: day("2000-01-01"),
  invoicedOn: undefined,
  complaint: "",
  causeNote: "",
  correction: "",
  symptom: undefined,
  component: undefined,
  failureMode: undefined,
  cause: "component",
  visits: 0,
  technician: undefined,
  payer: "customer",
  labourMinutes: undefined,
  labour: undefined,
  trip: undefined,
  authorizationNumber: undefined,
  authorizedOn: undefined,
  callbackOf: undefined,
};

const noUnit: Unit = {
  maker: "",
  model: "",
  productType: "front_load_washer",
  serial: undefined,
  madeFrom: undefined,
  madeUntil: undefined,
  shippedOn: undefined,
  soldOn: undefined,
  deliveredOn: undefined,
  installedOn: undefined,
  occupiedOn: undefined,
  registeredOn: undefined,
  retiredOn: undefined,
  recordedFrom: undefined,
  use: "household",
  territory: undefined,
  ownerNumber: 1,
};

const noLine: PartLine = {
  line: 1,
  partNumber: "",
  description: "",
  component: undefined,
  role: "fitted",
  quantity: 1,
  unitCost: { cents: 0, currency: "USD" },
  distributor: undefined,
  invoiceNumber: undefined,
  invoiceLine: undefined,
  invoicedOn: undefined,
};
