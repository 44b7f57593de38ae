import { csvResponse } from "@/app/_http/csv-response";
import { mayCall } from "@/app/_people/may-call";
import { keptViews } from "../kept-views";
import type { RatesView } from "../load-failure-rates";
import { rateRecord } from "../rate-record";
import { sortedGroups } from "../sorted-groups";

export const dynamic = "force-dynamic";

/** The view of the same address as a file: every group, also those too small to judge. */
export async function GET(request: Request): Promise<Response> {
  const caller = await mayCall(request, "GET /repeats/rates.csv");
  if (!caller.ok) return caller.response;
  const values = Object.fromEntries(new URL(request.url).searchParams);
  const view = await keptViews.rates(values);
  const by = view.kind === "rates" ? view.address.question.by : ["component"];
  const records = view.kind === "rates" ? recordsOf(view.rates, view.address.order) : [];
  const header = [
    ...by,
    "events",
    "unit_years",
    "units",
    "rate_per_100_unit_years",
    "low",
    "high",
    "predicted_by_ages",
    "times_predicted",
    "times_low",
    "times_high",
    "level",
    "method",
    "grade",
  ];
  const rows = records.map((record) => [
    ...by.map((dimension) => record.group[dimension]),
    record.failures,
    record.unitYears,
    record.units,
    record.ratePer100,
    record.low,
    record.high,
    record.predicted,
    record.timesPredicted,
    record.timesLow,
    record.timesHigh,
    record.level,
    record.method,
    record.grade,
  ]);
  return csvResponse(`rates-by-${by.join("-")}.csv`, header, rows);
}

type Rates = Extract<RatesView, { kind: "rates" }>;

function recordsOf(rates: Rates["rates"], order: Rates["address"]["order"]) {
  return sortedGroups(rates.groups, order).map((group) => rateRecord(group, rates.question.level));
}
