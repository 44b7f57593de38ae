import { type Column, Table } from "@/app/_ui/table";
import type { AreaAtRisk } from "@/db/queries/signal-machines";
import { formatCount, formatCounted } from "@/lib/format/format-count";
import { cellWords, signalFileHref } from "../../signal-words";
import type { SignalView } from "../load-signal";

/** The units in the field that may be next, by their owner's area. */
export function AtRisk({ view: { signal, areas, run, past } }: { readonly view: SignalView }) {
  const units = areas.reduce((sum, area) => sum + area.units, 0);
  return (
    <section className="stack-tight">
      <h2>In the field</h2>
      <p>
        {formatCounted(units, "unit")} in service: {cellWords(signal.lead.key)}.{" "}
        <a href={signalFileHref(signal.key, "units.csv", past ? run.asOf : undefined)} download>
          The list with serials
        </a>
      </p>
      <Table
        caption="Units in service by owner's area"
        columns={columns}
        rows={areas}
        rowKey={({ territory }) => territory ?? ""}
      />
    </section>
  );
}

const columns: readonly Column<AreaAtRisk>[] = [
  { key: "area", head: "Area", cell: ({ territory }) => territory ?? "Not on file" },
  { key: "units", head: "Units", kind: "number", cell: ({ units }) => formatCount(units) },
  { key: "failed", head: "Failed this way already", kind: "number", cell: ({ failed }) => formatCount(failed) },
];
