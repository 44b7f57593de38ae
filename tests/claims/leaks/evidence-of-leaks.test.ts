import { expect, test } from "vitest";
import { evidenceOfLeaks } from "@/lib/claims/leaks/evidence-of-leaks";
import { causeKeys } from "@/lib/domain/cause";
import type { JobRecord } from "@/lib/domain/job";
import { checkEvidence } from "@/lib/evidence/check-evidence";
import { entries } from "@/lib/evidence/entries";
import { seeded } from "../../calendar/seeded";
import { pumpRecord } from "../claim-case";

/** What a leak looks at. */
function looked(check: ReturnType<typeof checkEvidence>) {
  return { ...check, warnings: [] };
}

// By definition: the same check made of every job by itself. The seed is the length of a year.
test("a check made once for each kind of job says of every job what its own check says", () => {
  const random = seeded(365);
  const pick = <T>(from: readonly [T, ...T[]]): T => from[random(from.length)] ?? from[0];
  const memory = evidenceOfLeaks();
  const [first = entries[0], ...rest] = entries;
  if (first === undefined) throw new Error("no entries");
  for (let n = 0; n < 1500; n++) {
    const entry = pick([first, ...rest]);
    const base = pumpRecord();
    const record: JobRecord = {
      ...base,
      unit: { ...base.unit, productType: entry.productType },
      job: {
        ...base.job,
        jobNumber: `J${n}`,
        component: pick([entry.component, undefined, "door_lock"]),
        failureMode: pick([entry.failureModes[0], entry.failureModes[1], "x", undefined]),
        cause: pick([...causeKeys] as ["component"]),
        authorizationNumber: pick([undefined, " ", `A${n}`]),
        complaint: pick(["", "Suds on the floor"]),
      },
      partLines: Array.from({ length: random(3) }, (_, line) => ({
        ...(base.partLines[0] ?? noPart()),
        line: line + 1,
        role: pick(["fitted", "freight", "core_charge"]),
        component: pick([undefined, entry.component, "door_lock"]),
        partNumber: pick(["", `P-${n}`]),
        invoiceNumber: pick([undefined, `I-${n}`]),
      })),
      readings: random(4) === 0 ? base.readings : [],
      attachments: random(4) === 0 ? base.attachments : [],
    };
    expect(looked(memory(record, []))).toEqual(looked(checkEvidence(record, [])));
  }
});

function noPart(): never {
  throw new Error("the sample has no part line");
}
