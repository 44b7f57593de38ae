import { csvResponse } from "@/app/_http/csv-response";
import { mayCall } from "@/app/_people/may-call";
import { readOnly } from "@/db/client";
import { monthRows } from "../_components/demand-fan";
import { loadPart } from "../load-part";

export const dynamic = "force-dynamic";

const header = "month,used,mean,low_30,high_30,low_60,high_60,low_90,high_90".split(",");

/** What was used and what is expected, month by month. */
export async function GET(
  request: Request,
  { params }: { readonly params: Promise<{ readonly part: string }> },
): Promise<Response> {
  const caller = await mayCall(request, "GET /parts/[part]/months.csv");
  if (!caller.ok) return caller.response;
  const asked = decodeURIComponent((await params).part);
  const view = await readOnly((db) => loadPart(db, asked));
  if (view.kind !== "part") return csvResponse("part.csv", header, [], 404);
  const rows = monthRows(view.part).map(({ day, used, month }) => [
    day.slice(0, 7),
    used,
    month?.mean,
    month?.band30.low,
    month?.band30.high,
    month?.band60.low,
    month?.band60.high,
    month?.band90.low,
    month?.band90.high,
  ]);
  return csvResponse(`part-${view.part.partKey.replaceAll(/[^A-Za-z0-9]/g, "_")}.csv`, header, rows);
}
