import { type Column, Table } from "@/app/_ui/table";
import { photoSubjects } from "@/lib/domain/job";
import { cautions } from "@/lib/evidence/cautions";
import type { GeneralRange } from "@/lib/evidence/check";
import { formatRange } from "@/lib/format/format-reading";
import type { Sheet } from "@/lib/sheets/sheet";
import { type PlanStep, visitPlan } from "@/lib/sheets/visit-plan";

/** The sheet as a technician meets it: in the order of safety, with state, points, range and its mark, cautions and branches. */
export function SheetPreview({ sheet }: { readonly sheet: Sheet }) {
  const plan = visitPlan({ productType: sheet.productType, symptom: undefined, sheets: [sheet] });
  return (
    <Table
      caption="In the order in which it is asked; later steps drop out by what earlier ones show"
      columns={columns}
      rows={plan.steps}
      rowKey={({ check }) => check.key}
    />
  );
}

const powers = { off: "power off", powered_panels_closed: "powered, panels closed", live: "live" } as const;

const columns: readonly Column<PlanStep>[] = [
  {
    key: "check",
    head: "Check",
    cell: ({ check, branch, photo }) => (
      <span>
        {check.name}
        {branch !== undefined && <span className="small soft"> — only after: {branch.words}</span>}
        {photo !== undefined && <span className="small soft"> — photo: {photoSubjects[photo].toLowerCase()}</span>}
      </span>
    ),
  },
  { key: "state", head: "State and points", cell: ({ check }) => `${powers[check.energy]}; ${check.points}` },
  {
    key: "expect",
    head: "Expected, source and mark",
    cell: ({ check }) => (check.general.length === 0 ? check.expect : check.general.map(describeRange).join("; ")),
  },
  {
    key: "cautions",
    head: "Cautions",
    cell: ({ check }) => (
      <span className="small">
        {check.cautions.length === 0 ? "none of its own" : check.cautions.map((key) => cautions[key].text).join(" ")}
      </span>
    ),
  },
  { key: "proves", head: "What it says", cell: ({ check }) => check.proves },
];

function describeRange(range: GeneralRange): string {
  return `${formatRange(range)}, ${range.source} (${range.mark})${range.screensOnly ? ", decides nothing by itself" : ""}`;
}
