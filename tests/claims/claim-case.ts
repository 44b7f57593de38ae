import { day } from "@/lib/calendar/day";
import type { ClaimCase } from "@/lib/claims/claim-case";
import { decideCoverage } from "@/lib/coverage/decide-coverage";
import { type CoverageFile, emptyFile, jobCoverageFacts } from "@/lib/coverage/job-coverage-facts";
import type { JobRecord } from "@/lib/domain/job";
import type { Policy } from "@/lib/domain/policy";
import { checkEvidence } from "@/lib/evidence/check-evidence";
import { entryOf } from "@/lib/evidence/entries";
import { provingReadings } from "@/lib/evidence/proving-readings";
import { samplePolicy } from "../coverage/sample-policy";
import { jobRecord, type RecordNotes } from "../evidence/job-record";

/** A drain pump with an open winding, bought six months before, with every paper. Asked on 20 March 2025. */
export function pumpRecord(notes: RecordNotes = {}): JobRecord {
  const entry = entryOf("FL-PUMP-OPEN");
  if (entry === undefined) throw new Error("the catalogue lost its pump");
  const record = jobRecord({
    readings: provingReadings(entry),
    photos: ["plate", "fault_code", "drain_path", "part_labels", "receipt", "failed_part"],
    fitted: "drain_pump",
    ...notes,
    job: {
      complaint: "Will not drain.",
      causeNote: "Drain pump winding open, OL at the terminals.",
      correction: "Replaced pump, drain test pass.",
      symptom: "will_not_drain",
      component: "drain_pump",
      failureMode: "winding_open",
      ...notes.job,
    },
  });
  return { ...record, unit: { ...record.unit, soldOn: day("2024-09-01") } };
}

export const makerPolicy = samplePolicy({ maker: "Halvorsen", payer: { kind: "maker", name: "Halvorsen" } });

export function claimCase(record: JobRecord, policy: Policy = makerPolicy, file: CoverageFile = emptyFile): ClaimCase {
  const decision = decideCoverage(jobCoverageFacts(record, file), [policy]);
  return {
    record,
    decision,
    evidence: checkEvidence(record, []),
    policy,
    asOf: day("2025-03-20"),
    holidays: new Set(),
  };
}
