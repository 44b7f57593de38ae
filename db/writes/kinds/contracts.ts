import { normalised } from "@/lib/domain/normalised";
import { type ContractRow, parseContractRow } from "@/lib/intake/parse-contract-row";
import { flagRows } from "../staging/flag-rows";
import { keyText, noteUsed } from "../staging/merge-staged";
import { type ReadColumn, type StagedValue, stagedKind } from "../staging/staged-kind";
import { flagUnknownUnits } from "./flag-unknown-units";

const value = (
  name: string,
  type: string,
  read: (row: ContractRow) => StagedValue,
  from = name,
): ReadColumn<ContractRow> => ({ name, type, from, use: "value", value: read });

const help = (name: string, from: string, read: (row: ContractRow) => string): ReadColumn<ContractRow> => ({
  name,
  type: "text",
  from,
  use: "help",
  value: read,
});

/** Service contracts of units that are on file. */
export const contractsKind = stagedKind<ContractRow>({
  kind: "contracts",
  parse: parseContractRow,
  columns: [
    help("maker", "maker", (row) => row.maker),
    help("maker_n", "maker", (row) => normalised(row.maker)),
    help("serial", "serial", (row) => row.serial),
    help("serial_normalised", "serial", (row) => normalised(row.serial)),
    { ...help("contract_number", "contract_number", (row) => row.contractNumber), use: "once" },
    value("plan", "text", (row) => row.plan),
    value("sold_on", "date", (row) => row.soldOn),
    value("starts_on", "date", (row) => row.startsOn),
    value("ends_on", "date", (row) => row.endsOn),
    value("cancelled_on", "date", (row) => row.cancelledOn),
    value("wait_days", "integer", (row) => row.waitDays),
    value("deductible_cents", "bigint", (row) => row.deductible?.cents, "deductible"),
    value("limit_cents", "bigint", (row) => row.limit?.cents, "limit"),
    value("currency", "text", (row) => row.currency),
    value("holder", "text", (row) => row.holder),
  ],
  derived: [
    "unit_id bigint generated always as (hashtextextended(maker_n || '|' || serial_normalised, 0) & 9223372036854775807) stored",
  ],
  target: { table: "contracts", key: ["unit_id", "contract_number"], onInsert: {} },
  named: { column: "contract_number", noun: "contract" },
  async resolve() {},
  async check(tx, staged) {
    const { table, present } = staged;
    await flagUnknownUnits(tx, staged);
    const of = (column: string) => (present.has(column) ? `s.${column}` : `t.${column}`);
    await flagRows(
      tx,
      staged,
      `select s.row, 'contract_number', s.contract_number, 'would be sold on ' || ${of("sold_on")} || ', after its end on ' || ${of("ends_on")}, 'Give both days in this file.'
       from ${table} s join contracts t using (unit_id, contract_number) where s.readable and ${of("sold_on")} > ${of("ends_on")}`,
    );
  },
  async finish(tx, { table }, batchId) {
    const select = `select distinct ${keyText("s", ["unit_id"])} from ${table} s where s.fate is not null`;
    await noteUsed(tx, { table: "units", select, batchId });
  },
  recounts: "nothing",
});
