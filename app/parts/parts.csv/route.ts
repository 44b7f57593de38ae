import { csvResponse } from "@/app/_http/csv-response";
import { mayCall } from "@/app/_people/may-call";
import { readOnly } from "@/db/client";
import { loadPartList } from "@/db/queries/part-list";
import { plainAmount } from "@/lib/format/plain-amount";
import { adviceWords } from "../line-words";
import { filteredRows, needsOrder, type PartRow, partRows } from "../parts-view";
import { readPartsAddress } from "../read-parts-address";

export const dynamic = "force-dynamic";

const header =
  "part_number,description,component,on_hand,in_trucks,reserved,on_order,next_expected_on,needed_low_60,needed_high_60,needed_low_90,needed_high_90,reorder_point,order_now,chance_short,advice,used_12_months,jobs_12_months,last_used_on,unit_cost,currency".split(
    ",",
  );

/** Every row of the view of the same address. */
export async function GET(request: Request): Promise<Response> {
  const caller = await mayCall(request, "GET /parts/parts.csv");
  if (!caller.ok) return caller.response;
  const { filter } = readPartsAddress(Object.fromEntries(new URL(request.url).searchParams));
  const parts = await readOnly((db) => loadPartList(db));
  return csvResponse("parts.csv", header, filteredRows(partRows(parts), filter).map(csvRow));
}

function csvRow(row: PartRow) {
  const { line, plan } = row;
  const need = plan.reorder.kind === "reorder-point" ? plan.reorder : undefined;
  return [
    row.partNumber,
    row.description,
    row.component,
    row.onHand,
    row.inTrucks,
    row.reserved,
    row.onOrder,
    row.nextExpectedOn,
    need?.low60,
    need?.high60,
    need?.low90,
    need?.high90,
    need?.level,
    needsOrder(line) ? line.pieces : 0,
    "chanceShort" in line ? Math.round(1000 * line.chanceShort) / 1000 : undefined,
    adviceWords(row),
    row.usedLastYear,
    row.jobsLastYear,
    row.lastUsedOn,
    row.unitCostCents === undefined ? undefined : plainAmount(row.unitCostCents),
    row.currency,
  ];
}
