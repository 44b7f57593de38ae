import { Button } from "@/app/_ui/button";
import { Field } from "@/app/_ui/field";
import { Plate } from "@/app/_ui/plate";
import { StatusWord } from "@/app/_ui/status-word";
import type { StoredMark, StoredSignal } from "@/db/queries/signal-list";
import type { Day } from "@/lib/calendar/day";
import { dayFromNumber } from "@/lib/calendar/day-number";
import { formatDay } from "@/lib/format/format-day";
import { formatDecimal } from "@/lib/format/format-decimal";
import type { SignalState } from "@/lib/signals/signal-marks";
import { firstDayOf } from "@/lib/signals/weeks";
import { asksForALook, stateOfSignal, stateWords } from "../../state-of-signal";
import { mark, undo } from "../actions";
import { ActForm } from "./act-form";

interface Props {
  readonly signal: StoredSignal;
  readonly asOf: Day;
}

/** Where the signal stands, and what can be said of it. */
export function MarkForms({ signal, asOf }: Props) {
  const state = stateOfSignal(signal);
  const standing = "mark" in state ? signal.marks.find(({ markId }) => markId === state.mark) : undefined;
  return (
    <Plate title="What becomes of it">
      <p>
        <StatusWord status={asksForALook(state) ? "watch" : "note"}>{stateWords[state.kind]}</StatusWord>{" "}
        {standingWords(state, standing)}
      </p>
      {standing !== undefined && (
        <ActForm action={undo} hidden={{ key: signal.key, mark: String(standing.markId) }} field="reason">
          <Button weight="plain">Take that back</Button>
        </ActForm>
      )}
      <ActForm action={mark} hidden={{ key: signal.key, asOf }} field="reason">
        <Field label="Reason" name="reason" hint="Needed to explain or dismiss. It stays with the signal." />
        <div className="cluster">
          <Button name="kind" value="watch">
            Watch this
          </Button>
          <Button weight="plain" name="kind" value="not_now">
            Not now
          </Button>
          <Button weight="plain" name="kind" value="explain">
            Explained
          </Button>
          <Button weight="plain" name="kind" value="dismiss">
            Dismiss
          </Button>
        </div>
      </ActForm>
      {signal.marks.length > 0 && <History marks={signal.marks} />}
    </Plate>
  );
}

function standingWords(state: SignalState, standing: StoredMark | undefined): string {
  const why = standing?.reason ? `: “${standing.reason}”` : "";
  switch (state.kind) {
    case "new":
      return "Nobody has said anything of it that still holds.";
    case "watched":
      return `It stays on the list${why}.`;
    case "put-off":
      return `It is asked again in the week of ${formatDay(dayFromNumber(firstDayOf(state.untilWeek)))}${why}.`;
    case "explained":
    case "dismissed":
      return `It comes back only if it becomes worse than it was then${why}.`;
    case "returned":
      return `${state.observed} more since then, where ${formatDecimal(state.expected, 1)} were expected: worse than what was accepted${why}.`;
  }
}

const kinds: Readonly<Record<StoredMark["kind"], string>> = {
  watch: "watched",
  not_now: "put off",
  explain: "explained",
  dismiss: "dismissed",
  undo: "taken back",
};

function History({ marks }: { readonly marks: readonly StoredMark[] }) {
  return (
    <details>
      <summary>What was said of it ({marks.length})</summary>
      <ol>
        {marks.map(({ markId, kind, by, at, reason, observed, expected }) => (
          <li key={markId}>
            {at.slice(0, 16)}: {kinds[kind]} by {by}, at {observed} counted and {formatDecimal(expected, 1)} expected
            {reason === "" ? "" : ` — “${reason}”`}
          </li>
        ))}
      </ol>
    </details>
  );
}
