import { csvResponse } from "@/app/_http/csv-response";
import { mayCall } from "@/app/_people/may-call";
import { readOnly } from "@/db/client";
import { loadUnitsAtRisk } from "@/db/queries/signal-machines";
import { readDay } from "@/lib/calendar/day";
import { dayFromNumber } from "@/lib/calendar/day-number";
import type { CsvCell } from "@/lib/format/csv-text";
import { comparedYears } from "@/lib/signals/compared-years";
import { firstDayOf } from "@/lib/signals/weeks";
import { loadSignal, type SignalView } from "../load-signal";

export const dynamic = "force-dynamic";

interface Props {
  readonly params: Promise<{ readonly key: string; readonly file: string }>;
}

/** What the page of a signal draws, as files; and the units in the field. */
export async function GET(request: Request, { params }: Props): Promise<Response> {
  const caller = await mayCall(request, "GET /repeats/signals/[key]/[file]");
  if (!caller.ok) return caller.response;
  const { key, file } = await params;
  const as = new URL(request.url).searchParams.get("as");
  const view = await loadSignal(decodeURIComponent(key), as === null ? undefined : readDay(as));
  if (view === undefined)
    return csvResponse("no-such-signal.csv", ["problem"], [["No list has this signal as of that day."]], 404);
  const table = await tableOf(view, file);
  if (table === undefined)
    return csvResponse(
      "no-such-file.csv",
      ["problem"],
      [["Ask for weeks.csv, ages.csv, production.csv or units.csv."]],
      404,
    );
  return csvResponse(file, table.header, table.rows);
}

interface FileTable {
  readonly header: readonly string[];
  readonly rows: readonly (readonly CsvCell[])[];
}

async function tableOf({ signal, run, production }: SignalView, file: string): Promise<FileTable | undefined> {
  const { lead } = signal;
  switch (file) {
    case "weeks.csv":
      return {
        header: ["week_from", "counted", "expected"],
        rows: lead.weeklyExpected.map((expected, i) => [
          dayFromNumber(firstDayOf(lead.firstWeek + i)),
          lead.weeklyObserved[i],
          expected,
        ]),
      };
    case "ages.csv":
      return {
        header: ["age", "failures", "unit_years", "failures_of_others", "unit_years_of_others"],
        rows: comparedYears(lead.ages).map(({ name, own, ownYears, others, othersYears }) => [
          name,
          own,
          ownYears,
          others,
          othersYears,
        ]),
      };
    case "production.csv":
      return {
        header: ["made", "units", "counted", "expected", "serial_from", "serial_to"],
        rows: production.parts.map(({ which, units, observed, expected }) => [
          which,
          units,
          observed,
          expected,
          which === "in" ? production.serials?.from : undefined,
          which === "in" ? production.serials?.to : undefined,
        ]),
      };
    case "units.csv": {
      const units = await readOnly((db) => loadUnitsAtRisk(db, lead.key, run.asOf));
      return {
        header: ["serial", "model", "made_from", "made_until", "in_service_on", "area", "failed_this_way"],
        rows: units.map(({ serial, model, madeFrom, madeUntil, inServiceOn, territory, failed }) => [
          serial,
          model,
          madeFrom,
          madeUntil,
          inServiceOn,
          territory,
          failed,
        ]),
      };
    }
    default:
      return undefined;
  }
}
