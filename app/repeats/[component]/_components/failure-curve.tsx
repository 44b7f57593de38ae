import { StepCurve } from "@/app/_charts/step-curve";
import { EmptyState } from "@/app/_ui/empty-state";
import { Figure } from "@/app/_ui/figure";
import { type Column, Table } from "@/app/_ui/table";
import type { ComponentLife } from "@/lib/failures/component-life";
import { stepCurve, type WatchedAt } from "@/lib/figures/step-curve";
import { formatCount } from "@/lib/format/format-count";
import { describeShare } from "@/lib/format/format-share";
import { shareAt } from "../share-at";

interface Props {
  readonly life: ComponentLife;
  readonly name: string;
  readonly csvHref: string;
}

/** Share failed by age, with the numbers under it. */
export function FailureCurve({ life, name, csvHref }: Props) {
  const figure = stepCurve(life.curve, life.atYears);
  switch (figure.kind) {
    case "nobody-watched":
      return <EmptyState kind="filtered-away" title="No unit was watched for any time in this view" />;
    case "nobody-failed":
      return (
        <EmptyState
          kind="nothing-due"
          title={`None failed in ${formatCount(Math.floor(figure.untilMonths))} months of age`}
        />
      );
    case "too-few-to-draw":
      return (
        <EmptyState
          kind="filtered-away"
          title="Too few units to draw a curve: one more failure would move it by more than 5 in 100"
        />
      );
    case "steps":
      return (
        <Figure
          takeaway={`Share of ${name.toLowerCase()}s failed by age of the part`}
          csvHref={csvHref}
          note={figure.stopped !== undefined && <p>{figure.stopped}</p>}
          table={
            <Table
              caption="At whole years of age"
              columns={columnsOf(life)}
              rows={figure.watched}
              rowKey={(row) => String(row.months)}
              narrow="scroll"
            />
          }
        >
          <StepCurve label={`Share of ${name} failed by age`} figure={figure} />
        </Figure>
      );
  }
}

function columnsOf(life: ComponentLife): Column<WatchedAt>[] {
  return [
    { key: "age", head: "Months of age", kind: "number", cell: (row) => formatCount(row.months) },
    { key: "share", head: "Failed by then", cell: (row) => shareWords(life, row.months) },
    { key: "running", head: "Still running", kind: "number", cell: (row) => formatCount(row.stillRunning) },
    { key: "failed", head: "Failed", kind: "number", cell: (row) => formatCount(row.failed) },
    { key: "lost", head: "Lost sight of", kind: "number", cell: (row) => formatCount(row.lost) },
  ];
}

function shareWords(life: ComponentLife, months: number): string {
  const share = shareAt(life.curve, months);
  return share === undefined ? "none seen" : describeShare(share.failed, share.low, share.high);
}
