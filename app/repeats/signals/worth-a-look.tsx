import Link from "next/link";
import { StatusWord } from "@/app/_ui/status-word";
import { type Column, Table } from "@/app/_ui/table";
import type { StoredSignal } from "@/db/queries/signal-list";
import { formatCounted } from "@/lib/format/format-count";
import { formatDay } from "@/lib/format/format-day";
import { formatDecimal } from "@/lib/format/format-decimal";
import { AsOfForm } from "./as-of-form";
import type { CurrentRun } from "./current-run";
import { SignalFunnel } from "./signal-funnel";
import { extraWords, onsetWords, outlookOfSignal, ratioWords, signalHref, signalName } from "./signal-words";
import { signalsFinding } from "./signals-finding";
import { asksForALook, stateOfSignal, stateWords } from "./state-of-signal";

interface Props {
  readonly current: CurrentRun;
}

/** The list of what stands beyond luck; it opens the page where nothing else was asked. */
export function WorthALook({ current }: Props) {
  const heading = <h2>Worth a look</h2>;
  if (current.kind !== "run" || current.run.outcome !== "followed") {
    return (
      <section id="worth-a-look" className="stack-tight" aria-label="Worth a look">
        {heading}
        <p>{signalsFinding(current)}</p>
        {current.kind !== "no-data" && <AsOfForm asOf={undefined} />}
      </section>
    );
  }
  const { run, signals, past } = current;
  const rows = signals.map((signal) => ({ signal, state: stateOfSignal(signal) }));
  const [asked, set] = [
    rows.filter(({ state }) => asksForALook(state)),
    rows.filter(({ state }) => !asksForALook(state)),
  ];
  const as = past ? run.asOf : undefined;
  return (
    <section id="worth-a-look" className="stack-tight" aria-label="Worth a look">
      {heading}
      {signals.length > 0 && <p>{luckWords(run.byLuck, signals.length)}</p>}
      {current.outdated && (
        <p>Newer data are on file; these are the last figures that were worked out, as of {formatDay(run.asOf)}.</p>
      )}
      {asked.length > 0 && (
        <Table
          caption="Signals, the least luck first"
          captionHidden
          columns={columnsFor(as)}
          rows={asked}
          rowKey={({ signal }) => signal.key}
        />
      )}
      {set.length > 0 && (
        <details>
          <summary>Set aside ({set.length}): not now, explained or dismissed</summary>
          <Table
            caption="Signals that were set aside"
            captionHidden
            columns={columnsFor(as)}
            rows={set}
            rowKey={({ signal }) => signal.key}
          />
        </details>
      )}
      <p className="small">
        {formatCounted(run.stories, "group")} followed from week to week in {formatCounted(run.cells, "cell")}:
        components, symptoms and fault codes by model, maker and half-year of production, each against what units of the
        same kind and age do elsewhere in the fleet. Jobs closed by {formatDay(run.asOf)} are counted.{" "}
        <a href={`/repeats/signals/signals.csv${as === undefined ? "" : `?as=${as}`}`} download>
          CSV
        </a>
      </p>
      {run.funnel !== undefined && <SignalFunnel funnel={run.funnel} as={as} />}
      <AsOfForm asOf={as} />
    </section>
  );
}

interface Row {
  readonly signal: StoredSignal;
  readonly state: ReturnType<typeof stateOfSignal>;
}

function luckWords(byLuck: number, signals: number): string {
  return `Of ${formatCounted(signals, "line")} about ${formatDecimal(byLuck, 1)} may be luck.`;
}

function columnsFor(as: string | undefined): readonly Column<Row>[] {
  return [
    {
      key: "name",
      head: "What",
      cell: ({ signal }) => <Link href={signalHref(signal.key, as)}>{signalName(signal)}</Link>,
    },
    {
      key: "counts",
      head: "Counted / expected",
      kind: "number",
      cell: ({ signal }) => `${signal.observed} / ${formatDecimal(signal.expected, 1)}`,
    },
    { key: "ratio", head: "Times expected", cell: ({ signal }) => ratioWords(outlookOfSignal(signal).ratio) },
    { key: "since", head: "Since", cell: ({ signal }) => onsetWords(signal).replace("since ", ""), wideOnly: true },
    {
      key: "so-far",
      head: "Extra so far",
      cell: ({ signal }) => extraWords(outlookOfSignal(signal).extraSoFar),
      wideOnly: true,
    },
    {
      key: "ahead",
      head: "Extra in the next half-year",
      cell: ({ signal }) => extraWords(outlookOfSignal(signal).extraAhead),
      wideOnly: true,
    },
    {
      key: "state",
      head: "State",
      cell: ({ state }) => (
        <StatusWord status={asksForALook(state) ? "watch" : "note"}>{stateWords[state.kind]}</StatusWord>
      ),
    },
  ];
}
