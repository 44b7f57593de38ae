import { normalised } from "@/lib/domain/normalised";
import { type PartRow, parsePartRow } from "@/lib/intake/parse-part-row";
import { type ReadColumn, type StagedValue, stagedKind } from "../staging/staged-kind";
import { noteWords } from "./words-in-use";

const column = (
  use: "once" | "value",
  name: string,
  type: string,
  value: (row: PartRow) => StagedValue,
  from = name,
): ReadColumn<PartRow> => ({ name, type, from, use, value });

/** Stands for the day that nobody gave. */
const always = "0001-01-01";

/** The catalogue of parts: an entry for each part and day from which it holds. */
export const partsKind = stagedKind<PartRow>({
  kind: "parts",
  parse: parsePartRow,
  columns: [
    column("once", "part_number", "text", (row) => row.partNumber),
    column("once", "normalised", "text", (row) => normalised(row.partNumber), "part_number"),
    column("once", "maker", "text", (row) => row.maker ?? ""),
    column("once", "effective_on", "date", (row) => row.effectiveOn ?? always),
    { ...column("once", "maker_n", "text", (row) => normalised(row.maker ?? ""), "maker"), use: "help" },
    column("value", "description", "text", (row) => row.description),
    column("value", "component", "text", (row) => row.component),
    column("value", "replaces", "text", (row) => row.replaces),
    column("value", "superseded_by", "text", (row) => row.supersededBy),
    column("value", "list_cents", "bigint", (row) => row.listPrice?.cents, "list_price"),
    column("value", "cost_cents", "bigint", (row) => row.cost?.cents, "cost"),
    { ...column("once", "currency", "text", (row) => row.currency), use: "value" },
  ],
  derived: [
    "part_id bigint generated always as (hashtextextended(maker_n || '|' || normalised, 0) & 9223372036854775807) stored",
  ],
  target: { table: "parts", key: ["part_id", "effective_on"], onInsert: {} },
  named: { column: "part_number", noun: "part" },
  async resolve() {},
  async check() {},
  async finish(tx, { table }, batchId) {
    await noteWords(tx, {
      rows: `select distinct component, null::text from ${table} where fate is not null and component is not null`,
      batchId,
    });
  },
  recounts: "nothing",
});
