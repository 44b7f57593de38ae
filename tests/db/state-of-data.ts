import { sql } from "drizzle-orm";
import { readOnly } from "@/db/client";

/** SQL for each table's rows by their natural names: numbers that the database hands out, and loads, are left out. */
const views: Readonly<Record<string, string>> = {
  shop: "select to_jsonb(t) - 'batch_id' as row from shop t",
  makers: "select to_jsonb(t) - 'maker_id' as row from makers t",
  models:
    "select to_jsonb(t) - '{model_id,maker_id}'::text[] || jsonb_build_object('maker', k.name) as row from models t join makers k using (maker_id)",
  units:
    "select to_jsonb(t) - '{model_id,maker_id,batch_id}'::text[] || jsonb_build_object('model', m.number) as row from units t join models m using (model_id)",
  jobs: "select to_jsonb(t) - 'batch_id' as row from jobs t",
  part_lines: "select to_jsonb(t) - 'batch_id' as row from part_lines t",
  readings: "select to_jsonb(t) - 'batch_id' as row from readings t",
  components: "select to_jsonb(t) - 'batch_id' as row from components t",
  component_uses: "select to_jsonb(t) - 'batch_id' as row from component_uses t",
  expected_ranges:
    "select to_jsonb(t) - '{model_id,batch_id}'::text[] || jsonb_build_object('model', m.number) as row from expected_ranges t join models m using (model_id)",
  unit_facts: "select to_jsonb(t) - 'batch_id' as row from unit_facts t",
  contracts: "select to_jsonb(t) - 'batch_id' as row from contracts t",
  parts: "select to_jsonb(t) - 'batch_id' as row from parts t",
  policies: "select to_jsonb(t) - '{policy_id,maker_id,batch_id,published_at}'::text[] as row from policies t",
  ...Object.fromEntries(
    ["unit_windows", "unplaced_units", "job_cells", "repeated_jobs", "suggested_callbacks"].map((table) => [
      table,
      `select to_jsonb(t) - 'model_id' || jsonb_build_object('model', m.number) as row from ${table} t join models m using (model_id)`,
    ]),
  ),
};

/** Everything that the data say, table by table, so that two states can be compared and a difference can be read. */
export async function stateOfData(): Promise<Record<string, string[]>> {
  return await readOnly(async (db) => {
    const state: Record<string, string[]> = {};
    for (const [table, view] of Object.entries(views)) {
      state[table] = (await db.rows<{ row: string }>(sql.raw(`select row::text from (${view}) v order by 1`))).map(
        ({ row }) => row,
      );
    }
    return state;
  });
}
