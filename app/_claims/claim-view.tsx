import Link from "next/link";
import { DefinitionList } from "@/app/_ui/definition-list";
import { Notice } from "@/app/_ui/notice";
import { Plate } from "@/app/_ui/plate";
import { type Column, Table } from "@/app/_ui/table";
import { TaskList } from "@/app/_ui/task-list";
import { TaskRow, type TaskState } from "@/app/_ui/task-row";
import type { Claim, ClaimLine, ClaimTask, TaskKey } from "@/lib/claims/claim";
import { describeCoverage } from "@/lib/coverage/describe-coverage";
import { describeLooked } from "@/lib/coverage/describe-looked";
import { causes } from "@/lib/domain/cause";
import { capitalised } from "@/lib/format/capitalised";
import { formatDay, formatDaysLeft } from "@/lib/format/format-day";
import { formatMoney } from "@/lib/format/format-money";
import type { JudgedJob } from "./judge-job";

const taskTitles: Readonly<Record<TaskKey, string>> = {
  unit_and_serial: "Unit and serial",
  coverage_window: "Coverage window",
  fault_and_remedy: "Fault and remedy",
  readings: "Readings",
  photos: "Photos",
  parts_and_labour: "Parts and labour",
};
const taskStates: Readonly<Record<ClaimTask["state"], TaskState>> = {
  in_place: "in-place",
  missing: "missing",
  does_not_apply: "does-not-apply",
};

interface TasksProps {
  readonly tasks: readonly ClaimTask[];
  readonly jobNumber: string;
  readonly unitId: string;
}

/** The six things a claim is made of, each in place, missing or not needed, and where it can be mended. */
export function ClaimTasks({ tasks, jobNumber, unitId }: TasksProps) {
  const job = `/jobs/${encodeURIComponent(jobNumber)}`;
  const places: Readonly<Record<TaskKey, string>> = {
    unit_and_serial: `/units/${unitId}`,
    coverage_window: `/units/${unitId}/facts`,
    fault_and_remedy: job,
    readings: `${job}#readings`,
    photos: `${job}#photos`,
    parts_and_labour: job,
  };
  return (
    <TaskList>
      {tasks.map((task) => (
        <TaskRow
          key={task.key}
          title={taskTitles[task.key]}
          state={taskStates[task.state]}
          href={asksForPaper(task) ? `${job}#photos` : places[task.key]}
          detail={
            <ul>
              {[...task.found, ...task.fixes].map((line) => (
                <li key={line}>{capitalised(line)}</li>
              ))}
            </ul>
          }
        />
      ))}
    </TaskList>
  );
}

/** A paper that is missing is attached to the job, wherever else the task is mended. */
function asksForPaper({ fixes }: ClaimTask): boolean {
  return fixes.some((fix) => fix.startsWith("Attach"));
}

/** The decision for each pay item, with its sum; what the law may leave open is always said. */
export function CoverageWordsPlate({ decision }: Pick<JudgedJob, "decision">) {
  const words = describeCoverage(decision);
  return (
    <Plate title="Coverage">
      <ul>
        {words.items.map(({ item, sentence }) => (
          <li key={item}>{sentence}</li>
        ))}
      </ul>
      {[...words.arithmetic, ...words.boundary, ...words.others, ...words.statutory].map((line) => (
        <p key={line}>{line}</p>
      ))}
      <p className="small soft">{words.defer}</p>
    </Plate>
  );
}

export function ClaimAmounts({ claim }: { readonly claim: Claim }) {
  const { currency } = claim;
  const money = (cents: number) => formatMoney({ cents, currency });
  return (
    <>
      <Table
        caption="What is asked"
        columns={lineColumns(money)}
        rows={claim.lines.map((line, index) => ({ ...line, index }))}
        rowKey={(line) => String(line.index)}
      />
      <DefinitionList
        items={[
          ...claim.deductions.map((deduction) => ({
            term: "Taken off",
            detail: money(-deduction.cents),
            source: deduction.basis,
          })),
          { term: "Total", detail: money(claim.totalCents) },
          {
            term: "File by",
            detail: `${formatDay(claim.filing.lastDay)}, ${formatDaysLeft(claim.filing.daysLeft)}`,
            source: claim.filing.by === "sending" ? "counted by the day of sending" : "counted by the payer’s receipt",
          },
        ]}
      />
      {claim.warnings.length > 0 && (
        <Notice status="watch" title="Words that a payer may read as an exclusion">
          <p>
            {claim.warnings
              .map(({ word, pointsTo }) => `“${word}” (${causes[pointsTo].name.toLowerCase()})`)
              .join(", ")}
            . The text stays as the technician wrote it.
          </p>
        </Notice>
      )}
    </>
  );
}

function lineColumns(money: (cents: number) => string): Column<ClaimLine & { readonly index: number }>[] {
  return [
    { key: "item", head: "For", cell: (line) => line.description },
    { key: "quantity", head: "Quantity", kind: "number", cell: (line) => line.quantity },
    { key: "cents", head: "Amount", kind: "number", cell: (line) => money(line.cents) },
    { key: "basis", head: "How it came about", wideOnly: true, cell: (line) => line.basis },
    {
      key: "invoice",
      head: "Invoice and line",
      wideOnly: true,
      cell: (line) => [line.invoiceNumber, line.invoiceLine].filter((part) => part !== undefined).join(" / ") || "–",
    },
  ];
}

export function ClaimMargin({
  jobNumber,
  judged: { decision, claims },
}: {
  readonly jobNumber: string;
  readonly judged: Pick<JudgedJob, "decision" | "claims">;
}) {
  const names = new Map(claims.map(({ given: { policy } }) => [policy.key, policy.name]));
  return (
    <>
      <p>
        Made from job <Link href={`/jobs/${encodeURIComponent(jobNumber)}`}>{jobNumber}</Link> as it stands now.
      </p>
      <p>Rules looked at, in order:</p>
      {describeLooked(decision.looked).map(({ policy, sentences }, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: one policy is asked more than once, and the order never changes
        <div key={index} className="small">
          {policy !== undefined && <p className="soft">{names.get(policy) ?? policy.replaceAll("_", " ")}</p>}
          <ul>
            {sentences.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </div>
      ))}
      <p>The policy’s wording and local law decide; this page shows terms, dates and reasons.</p>
    </>
  );
}
