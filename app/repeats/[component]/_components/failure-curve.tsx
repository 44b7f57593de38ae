import { StepCurve } from "@/app/_charts/step-curve";
import { EmptyState } from "@/app/_ui/empty-state";
import { Figure } from "@/app/_ui/figure";
import { type Column, Table } from "@/app/_ui/table";
import type { LifeDetail } from "@/lib/failures/life-detail";
import { daysPerMonth } from "@/lib/failures/rate-question";
import { type ModelLine, modelLine, withRoomFor } from "@/lib/figures/model-line";
import { stepCurve, type WatchedAt } from "@/lib/figures/step-curve";
import { formatCount } from "@/lib/format/format-count";
import { describeShare } from "@/lib/format/format-share";
import { shareAt } from "../share-at";

interface Props {
  readonly life: LifeDetail;
  readonly name: string;
  readonly csvHref: string;
}

/** Share failed by age, with the numbers under it and the fitted life over it. */
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
    case "steps": {
      const model = life.model.kind === "model" ? modelLine(life.model, figure) : undefined;
      return (
        <Figure
          takeaway={`Share of ${name.toLowerCase()}s failed by age of the part`}
          csvHref={csvHref}
          note={<CurveNotes life={life} stopped={figure.stopped} model={model} />}
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
          <StepCurve
            label={`Share of ${name} failed by age`}
            figure={model === undefined ? figure : withRoomFor(figure, model)}
            model={model}
            names={{ steps: "what was seen, with its range", model: "Weibull life fitted to it: a model" }}
          />
        </Figure>
      );
    }
  }
}

interface NotesProps {
  readonly life: LifeDetail;
  readonly stopped: string | undefined;
  readonly model: ModelLine | undefined;
}

function CurveNotes({ life, stopped, model }: NotesProps) {
  return (
    <>
      {stopped !== undefined && <p>{stopped}</p>}
      {model !== undefined && (
        <p>
          The dotted line is fitted to the steps and ends where they end; its bars are the model’s own range. Where the
          two part, believe the steps.
        </p>
      )}
      {life.partsFromAge >= daysPerMonth && (
        <p>
          No part was watched before {formatCount(life.partsFromAge / daysPerMonth)} months of age: the shares are of
          those that came so far.
        </p>
      )}
      {life.question.where.symptom !== undefined && (
        <p>
          Failures with another symptom end a life without counting as failed: the share is what it would be if only
          this symptom could happen.
        </p>
      )}
      {life.curve.kind === "curve" && life.curve.collapsed && (
        <p>All parts at risk at one age had failed, so the curve reaches 100 and says nothing about older ones.</p>
      )}
    </>
  );
}

function columnsOf(life: LifeDetail): Column<WatchedAt>[] {
  return [
    { key: "age", head: "Months of age", kind: "number", cell: (row) => formatCount(row.months) },
    { key: "share", head: "Failed by then", cell: (row) => shareWords(life, row.months) },
    { key: "running", head: "Still running", kind: "number", cell: (row) => formatCount(row.stillRunning) },
    { key: "failed", head: "Failed", kind: "number", cell: (row) => formatCount(row.failed) },
    { key: "lost", head: "Lost sight of", kind: "number", cell: (row) => formatCount(row.lost) },
  ];
}

function shareWords(life: LifeDetail, months: number): string {
  const share = shareAt(life.curve, months);
  return share === undefined ? "none seen" : describeShare(share.failed, share.low, share.high);
}
