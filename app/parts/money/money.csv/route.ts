import { csvResponse } from "@/app/_http/csv-response";
import { mayCall } from "@/app/_people/may-call";
import { readOnly } from "@/db/client";
import { monthAfter } from "@/lib/forecast/forecast-month";
import { plainAmount } from "@/lib/format/plain-amount";
import { loadPartsMoney } from "../load-money";

export const dynamic = "force-dynamic";

const header =
  "component,month,currency,spend_mean,spend_low_60,spend_high_60,spend_low_90,spend_high_90,pieces_mean,pieces_low_90,pieces_high_90".split(
    ",",
  );

/** Expected spend by component and month, all months of the forecast. */
export async function GET(request: Request): Promise<Response> {
  const caller = await mayCall(request, "GET /parts/money/money.csv");
  if (!caller.ok) return caller.response;
  const { totals, state, currency } = await readOnly(loadPartsMoney);
  const from = state.forecastFrom;
  const rows =
    from === undefined
      ? []
      : totals.flatMap(({ key, total }) =>
          total.months.map(({ cents, pieces }, i) => [
            key,
            monthAfter(from, i).slice(0, 7),
            currency,
            ...[cents.mean, cents.low60, cents.high60, cents.low90, cents.high90].map((each) =>
              plainAmount(Math.round(each)),
            ),
            Math.round(100 * pieces.mean) / 100,
            pieces.low90,
            pieces.high90,
          ]),
        );
  return csvResponse("parts-money.csv", header, rows);
}
