import Link from "next/link";
import type { JudgedJob } from "@/app/_claims/judge-job";
import { type Definition, DefinitionList } from "@/app/_ui/definition-list";
import { Tag } from "@/app/_ui/tag";
import type { ClaimListRow } from "@/db/queries/claim-list";
import type { Day } from "@/lib/calendar/day";
import { describeCoverage } from "@/lib/coverage/describe-coverage";
import { formatDay } from "@/lib/format/format-day";

interface Props {
  readonly judged: JudgedJob;
  readonly drafts: readonly ClaimListRow[];
}

/** Unit, dates, coverage in a line each, and the load that brought the job. */
export function JobMargin({ judged: { stored, decision }, drafts }: Props) {
  const { job, unit } = stored.record;
  const path = `/jobs/${encodeURIComponent(job.jobNumber)}`;
  const day = (term: string, value: Day | undefined): Definition[] =>
    value === undefined ? [] : [{ term, detail: formatDay(value) }];
  return (
    <>
      <p>
        <Tag href={`/units/${stored.unitId}`}>{unit.serial ?? "no serial"}</Tag> {unit.maker} {unit.model}
      </p>
      {!stored.identified && (
        <p>
          This job came without a serial: it hangs on a unit of its own and is in no rate.{" "}
          <Link href={`${path}/unit`}>Say which unit it was</Link>
        </p>
      )}
      <DefinitionList
        items={[
          ...day("Reported", job.requestedOn),
          ...day("First visit", job.firstVisitOn),
          ...day("Completed", job.completedOn),
          ...day("Unit sold", unit.soldOn),
          { term: "Technician", detail: job.technician ?? "not named" },
          { term: "Filed as paid by", detail: job.payer.replaceAll("_", " ") },
          ...(job.callbackOf === undefined
            ? []
            : [
                {
                  term: "Returns to",
                  detail: <Link href={`/jobs/${encodeURIComponent(job.callbackOf)}`}>{job.callbackOf}</Link>,
                },
              ]),
        ]}
      />
      <ul>
        {describeCoverage(decision).items.map(({ item, sentence }) => (
          <li key={item}>{sentence}</li>
        ))}
      </ul>
      {drafts.map((draft) => (
        <p key={draft.claimNumber}>
          Claim <Link href={`/claims/${encodeURIComponent(draft.claimNumber)}`}>{draft.claimNumber}</Link>
        </p>
      ))}
      <ul>
        {stored.batchId !== null && (
          <li>
            From <Link href={`/files/${stored.batchId}`}>load {stored.batchId}</Link>
          </li>
        )}
        <li>
          <Link href={`${path}/history`}>History and raw cells</Link>
        </li>
        <li>
          <Link href={`${path}/edit`}>Set a field</Link>
        </li>
      </ul>
    </>
  );
}
