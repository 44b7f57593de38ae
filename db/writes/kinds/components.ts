import { type ComponentRow, parseComponentRow } from "@/lib/intake/parse-component-row";
import { flagRows } from "../staging/flag-rows";
import { run } from "../staging/run";
import { stagedKind } from "../staging/staged-kind";

/** Uses that the row states and nobody has stored. */
const missingUse =
  "exists (select from unnest(s.product_types) as kind where not exists (select from component_uses w where w.component = s.key and w.product_type = kind))";

/** A company's own components. Kinds of appliance are added to those on file, never removed: jobs rely on them. */
export const componentsKind = stagedKind<ComponentRow>({
  kind: "components",
  parse: parseComponentRow,
  columns: [
    { name: "key", type: "text", from: "component", use: "once", value: (row) => row.component },
    { name: "name", type: "text", from: "name", use: "value", value: (row) => row.name },
    { name: "part_of", type: "text", from: "part_of", use: "value", value: (row) => row.partOf },
    {
      name: "product_types",
      type: "text[]",
      from: "product_types",
      use: "help",
      value: (row) => `{${row.productTypes.join(",")}}`,
    },
  ],
  derived: [],
  target: { table: "components", key: ["key"], onInsert: {}, alsoDiffers: missingUse },
  named: { column: "component", noun: "component" },
  async resolve() {},
  async check(tx, staged) {
    await flagRows(
      tx,
      staged,
      `select s.row, 'part_of', s.part_of, 'is not a component on file or in this file', 'Correct it, or add a row for it.'
       from ${staged.table} s where s.readable and s.part_of is not null
         and not exists (select from components c where c.key = s.part_of) and not exists (select from ${staged.table} o where o.readable and o.key = s.part_of)`,
    );
  },
  async finish(tx, { table }, batchId) {
    await run(
      tx,
      `with made as (
         insert into component_uses (component, product_type, batch_id)
         select distinct s.key, kind, ${batchId} from ${table} s, unnest(s.product_types) as kind where s.fate is not null
         on conflict do nothing returning component, product_type)
       insert into batch_changes (batch_id, table_name, key, what)
       select ${batchId}, 'component_uses', component || chr(31) || product_type, 'made' from made`,
    );
    await run(
      tx,
      `insert into batch_changes (batch_id, table_name, key, what)
       select distinct ${batchId}, 'component_uses', s.key || chr(31) || kind, 'kept' from ${table} s, unnest(s.product_types) as kind where s.fate is not null
       on conflict do nothing`,
    );
  },
  recounts: "nothing",
});
