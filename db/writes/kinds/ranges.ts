import { normalised } from "@/lib/domain/normalised";
import { parseRangeRow, type RangeRow } from "@/lib/intake/parse-range-row";
import { flagRows } from "../staging/flag-rows";
import { run } from "../staging/run";
import { stagedKind } from "../staging/staged-kind";

export const rangesKind = stagedKind<RangeRow>({
  kind: "ranges",
  parse: parseRangeRow,
  columns: [
    { name: "maker", type: "text", from: "maker", use: "help", value: (row) => row.maker },
    { name: "maker_n", type: "text", from: "maker", use: "help", value: (row) => normalised(row.maker) },
    { name: "model", type: "text", from: "model", use: "help", value: (row) => row.model },
    { name: "model_n", type: "text", from: "model", use: "help", value: (row) => normalised(row.model) },
    { name: "check_key", type: "text", from: "check", use: "once", value: ({ range }) => range.check },
    { name: "condition", type: "text", from: "condition", use: "once", value: ({ range }) => range.condition ?? "" },
    { name: "low", type: "double precision", from: "low", use: "value", value: ({ range }) => range.low },
    { name: "high", type: "double precision", from: "high", use: "value", value: ({ range }) => range.high },
    { name: "unit", type: "text", from: "unit", use: "value", value: ({ range }) => range.unit },
    { name: "source", type: "text", from: "source", use: "value", value: ({ range }) => range.source },
    { name: "mark", type: "text", from: "mark", use: "value", value: ({ range }) => range.mark },
  ],
  derived: ["model_id integer"],
  target: { table: "expected_ranges", key: ["model_id", "check_key", "condition"], onInsert: {} },
  named: { column: "check", noun: "range" },
  async resolve(tx, { table }) {
    await run(
      tx,
      `update ${table} s set model_id = m.model_id from makers k join models m using (maker_id)
       where s.readable and k.normalised = s.maker_n and m.normalised = s.model_n`,
    );
  },
  async check(tx, staged) {
    await flagRows(
      tx,
      staged,
      `select s.row, 'model', s.model, 'is not a model of ' || s.maker || ' on file', 'Correct the maker or the model, or load units of it first.'
       from ${staged.table} s where s.readable and s.model_id is null`,
    );
    const one = (column: string) => (staged.present.has(column) ? `s.${column}` : `t.${column}`);
    await flagRows(
      tx,
      staged,
      `select s.row, 'low', s.low::text, 'and high would run from ' || ${one("low")} || ' to ' || ${one("high")}, 'Give both ends in this file.'
       from ${staged.table} s join expected_ranges t using (model_id, check_key, condition) where s.readable and ${one("low")} > ${one("high")}`,
    );
  },
  recounts: "nothing",
});
