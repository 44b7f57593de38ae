import { todayIn } from "@/app/_clock/today";
import { csvResponse } from "@/app/_http/csv-response";
import { mayCall } from "@/app/_people/may-call";
import { readOnly } from "@/db/client";
import { loadOrderList } from "@/db/queries/part-orders";
import { loadShop } from "@/db/queries/shop";
import { addDays } from "@/lib/calendar/day";
import { plainAmount } from "@/lib/format/plain-amount";

export const dynamic = "force-dynamic";

const header =
  "order,state,part_number,description,supplier,quantity,received,unit_cost,currency,ordered_on,expected_on,closed_on,why,note".split(
    ",",
  );

/** The order list as the page shows it. */
export async function GET(request: Request): Promise<Response> {
  const caller = await mayCall(request, "GET /parts/orders/orders.csv");
  if (!caller.ok) return caller.response;
  const lines = await readOnly(async (db) => loadOrderList(db, addDays(todayIn((await loadShop(db)).timeZone), -30)));
  return csvResponse(
    "order-list.csv",
    header,
    lines.map((line) => [
      line.orderId,
      line.state,
      line.partNumber,
      line.description,
      line.supplier,
      line.quantity,
      line.received,
      line.unitCostCents === undefined ? undefined : plainAmount(line.unitCostCents),
      line.currency,
      line.orderedOn,
      line.expectedOn,
      line.closedOn,
      line.why,
      line.note,
    ]),
  );
}
