import { csvResponse } from "@/app/_http/csv-response";
import { mayCall } from "@/app/_people/may-call";
import { readDay } from "@/lib/calendar/day";
import { currentRun } from "../current-run";
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

/** The list as a file. */
export async function GET(request: Request): Promise<Response> {
  const caller = await mayCall(request, "GET /repeats/signals/signals.csv");
  if (!caller.ok) return caller.response;
  const asked = new URL(request.url).searchParams.get("as") ?? undefined;
  const current = await currentRun(asked === undefined ? undefined : readDay(asked));
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
