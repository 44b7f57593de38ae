import { normalised } from "@/lib/domain/normalised";
import { parseUnitFactsRow, type UnitFactsRow } from "@/lib/intake/parse-unit-facts-row";
import { flagRows } from "../staging/flag-rows";
import { keyText, noteUsed } from "../staging/merge-staged";
import { type ReadColumn, type StagedValue, stagedKind } from "../staging/staged-kind";
import { flagUnknownUnits } from "./flag-unknown-units";

const value = (
  name: string,
  type: string,
  read: (row: UnitFactsRow) => StagedValue,
  use: "value" | "help" = "value",
  from = name,
): ReadColumn<UnitFactsRow> => ({ name, type, from, use, value: read });

/** What is known of units for their cover beside the register. A fact that was set by hand stands against the file. */
export const factsOfUnitsKind = stagedKind<UnitFactsRow>({
  kind: "unit-facts",
  parse: parseUnitFactsRow,
  columns: [
    value("maker", "text", (row) => row.maker, "help"),
    value("maker_n", "text", (row) => normalised(row.maker), "help", "maker"),
    value("serial", "text", (row) => row.serial, "help"),
    value("serial_normalised", "text", (row) => normalised(row.serial), "help", "serial"),
    value("first_used_on", "date", (row) => row.firstUsedOn),
    value("acquired_on", "date", (row) => row.acquiredOn),
    value("transfer_registered_on", "date", (row) => row.transferRegisteredOn),
    value("exchanged_on", "date", (row) => row.exchangedOn),
    value("exchanged_serial", "text", (row) => row.exchangedSerial),
    value("serial_removed", "boolean", (row) => row.serialRemoved),
  ],
  derived: [
    "unit_id bigint generated always as (hashtextextended(maker_n || '|' || serial_normalised, 0) & 9223372036854775807) stored",
  ],
  target: { table: "unit_facts", key: ["unit_id"], onInsert: {} },
  named: { column: "serial", noun: "unit" },
  async resolve() {},
  async check(tx, staged) {
    const { table, present } = staged;
    await flagUnknownUnits(tx, staged);
    const of = (column: string) => (present.has(column) ? `s.${column}` : `t.${column}`);
    await flagRows(
      tx,
      staged,
      `select s.row, 'serial', s.serial, 'would have its transfer registered on ' || ${of("transfer_registered_on")} || ', before it was taken over on ' || ${of("acquired_on")}, 'Give both days in this file.'
       from ${table} s join unit_facts t using (unit_id) where s.readable and ${of("transfer_registered_on")} < ${of("acquired_on")}
       union all
       select s.row, 'serial', s.serial, 'would be an exchange for ' || ${of("exchanged_serial")} || ' without its day', 'Give both in this file.'
       from ${table} s join unit_facts t using (unit_id) where s.readable and ${of("exchanged_serial")} is not null and ${of("exchanged_on")} is null`,
    );
  },
  async finish(tx, { table }, batchId) {
    const select = `select distinct ${keyText("s", ["unit_id"])} from ${table} s where s.fate is not null`;
    await noteUsed(tx, { table: "units", select, batchId });
  },
  recounts: "nothing",
});
