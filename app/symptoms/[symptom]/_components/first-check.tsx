import { Notice } from "@/app/_ui/notice";
import type { ProductType } from "@/lib/domain/product-type";
import { nextCheck } from "@/lib/sheets/next-check";
import type { Sheet } from "@/lib/sheets/sheet";
import type { SheetAnswer } from "@/lib/sheets/sheet-answer";
import { type SymptomCell, sheetBasis } from "@/lib/sheets/sheet-basis";
import { componentsBehind, visitPlan } from "@/lib/sheets/visit-plan";
import { walk } from "@/lib/sheets/walk";

interface Props {
  readonly symptom: string;
  readonly productType: ProductType;
  readonly sheets: readonly Sheet[];
  readonly cells: readonly SymptomCell[];
}

/** The check that separates the candidates soonest, once the code has been read: what a sheet begins with. */
export function FirstCheck({ symptom, productType, sheets, cells }: Props) {
  const behind = new Set(componentsBehind(productType, symptom, sheets));
  const plan = visitPlan({ productType, symptom, sheets: sheets.filter(({ component }) => behind.has(component)) });
  const basis = sheetBasis(cells, { modelId: -1, ageBand: "age not known" });
  const proposal = nextCheck(plan, walk(plan, [codeRead], []), basis);
  if (proposal.kind === "done") return null;
  const { step, reason } = proposal;
  return (
    <Notice status="note" title={`First after the code: ${step.check.name.toLowerCase()}`}>
      <p>
        {reason.kind === "most per minute"
          ? `Of the checks with the power off it is expected to settle most per minute: ${Math.round(reason.settles * 100)} in 100 of what is open, in ${reason.minutes} min.`
          : "The sheet’s order: the closed jobs are too few to say more, or do not tell the checks apart."}
      </p>
    </Notice>
  );
}

/** As if no code were stored. */
const codeRead: SheetAnswer = {
  id: "00000000-0000-4000-8000-000000000000",
  sequence: 1,
  check: "fault_code",
  time: 1,
  given: { kind: "skip", reason: "other" },
  note: "",
  at: "",
};
