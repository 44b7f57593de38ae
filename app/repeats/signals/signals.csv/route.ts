import { csvResponse } from "@/app/_http/csv-response";
import { mayCall } from "@/app/_people/may-call";
import { readDay } from "@/lib/calendar/day";
import { type CurrentRun, currentRun } from "../current-run";
import { limitsWords } from "../limits-words";
import { cellWords, outlookOfSignal } from "../signal-words";
import { stateOfSignal, stateWords } from "../state-of-signal";

export const dynamic = "force-dynamic";

const header = [
  "signal",
  "machines",
  "counted",
  "expected",
  "times_expected",
  "low",
  "high",
  "onset_on",
  "extra_so_far",
  "extra_next_half_year",
  "chance_by_luck_in_a_year",
  "adjusted_for_all_groups",
  "state",
  "as_of",
];

/** The list as a file; with `of=funnel` the groups that were looked at, as far as the funnel draws them. */
export async function GET(request: Request): Promise<Response> {
  const caller = await mayCall(request, "GET /repeats/signals/signals.csv");
  if (!caller.ok) return caller.response;
  const search = new URL(request.url).searchParams;
  const asked = search.get("as") ?? undefined;
  const current = await currentRun(asked === undefined ? undefined : readDay(asked));
  if (search.get("of") === "funnel") return funnelFile(current);
  const signals = current.kind === "run" ? current.signals : [];
  const asOf = current.kind === "run" ? current.run.asOf : undefined;
  return csvResponse(
    "worth-a-look.csv",
    header,
    signals.map((signal) => {
      const { ratio, extraSoFar, extraAhead } = outlookOfSignal(signal);
      return [
        signal.wordName,
        cellWords(signal.lead.key),
        signal.observed,
        signal.expected,
        ratio.point,
        ratio.low,
        ratio.high,
        signal.onsetOn,
        extraSoFar.point,
        extraAhead.point,
        signal.chance,
        signal.adjusted,
        stateWords[stateOfSignal(signal).kind],
        asOf,
      ];
    }),
  );
}

function funnelFile(current: CurrentRun): Response {
  const funnel = current.kind === "run" ? current.run.funnel : undefined;
  return csvResponse(
    "all-groups.csv",
    ["component", "machines", "counted", "expected", "times_expected", "against_limits"],
    (funnel?.drawn ?? []).map((cell) => [
      cell.key.word,
      cellWords(cell.key),
      cell.observed,
      cell.expected,
      cell.observed / cell.expected,
      limitsWords(cell, funnel?.spread ?? 0),
    ]),
  );
}
