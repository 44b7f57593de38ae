import { Client } from "pg";
import { SettingsError } from "../settings-error";
import { copiedTables, spreadBy, spreadTables } from "./table-places";

/**
 * Turns a fresh database into its distributed form: tables of units spread by unit, the catalogue copied to every machine.
 * @param url  of the coordinator, with this program's schema and no company in it
 * @throws SettingsError where the server has no such extension, or the database is in use
 */
export async function spreadTablesOver(url: string): Promise<{ readonly machines: number }> {
  const client = new Client({ connectionString: url, application_name: "ohmsworth distribute" });
  client.on("error", () => {}); // the statement in hand reports it
  await client.connect();
  try {
    await refuseOthers(client);
    await client.query("start transaction");
    await client.query("set local statement_timeout = 0");
    const links = await takeLinksOff(client);
    await takeWatchersOff(client);
    for (const table of copiedTables) await client.query("select create_reference_table($1)", [table]);
    const [first, ...more] = spreadTables;
    await client.query("select create_distributed_table($1, $2)", [first, spreadBy]);
    for (const table of more) {
      await client.query("select create_distributed_table($1, $2, colocate_with => $3)", [table, spreadBy, first]);
    }
    for (const link of links) await client.query(link);
    await client.query("commit");
    const { rows } = await client.query<{ machines: number }>(
      "select count(*)::integer as machines from citus_get_active_worker_nodes()",
    );
    return { machines: rows[0]?.machines ?? 0 };
  } catch (error) {
    await client.query("rollback").catch(() => {});
    throw error;
  } finally {
    await client.end();
  }
}

async function refuseOthers(client: Client): Promise<void> {
  const { rows: extension } = await client.query("select from pg_extension where extname = 'citus'");
  if (extension.length === 0) {
    throw new SettingsError(
      "This server cannot spread tables: the extension citus is not in this database. Install it on every machine, run “create extension citus”, name the machines with citus_add_node, and try again.",
    );
  }
  const { rows: spread } = await client.query("select from pg_dist_partition where logicalrel = 'units'::regclass");
  if (spread.length > 0) throw new SettingsError("The tables of this database are spread already.");
  const { rows: company } = await client.query("select from units limit 1");
  if (company.length > 0) {
    throw new SettingsError(
      "This database holds a company. Make a backup, distribute a fresh database, and restore the backup into that.",
    );
  }
}

/** A reference between two tables is allowed only while both are in the same form. */
async function takeLinksOff(client: Client): Promise<readonly string[]> {
  const { rows } = await client.query<{ off: string; on: string }>(
    `select format('alter table %s drop constraint %I', conrelid::regclass, conname) as off,
       format('alter table %s add constraint %I %s', conrelid::regclass, conname, pg_get_constraintdef(oid)) as on
     from pg_constraint where contype = 'f' and connamespace = 'public'::regnamespace
       and (conrelid::regclass::text = any($1) or confrelid::regclass::text = any($1)) order by conrelid::regclass::text, conname`,
    [[...spreadTables, ...copiedTables]],
  );
  for (const { off } of rows) await client.query(off);
  return rows.map(({ on }) => on);
}

/** Such tables can have no triggers, so the change log hears of them no more; what was sent is held by its hashes all the same. */
async function takeWatchersOff(client: Client): Promise<void> {
  const { rows } = await client.query<{ off: string }>(
    `select format('drop trigger %I on %s', tgname, tgrelid::regclass) as off from pg_trigger
     where not tgisinternal and tgrelid::regclass::text = any($1) order by 1`,
    [[...spreadTables, ...copiedTables]],
  );
  for (const { off } of rows) await client.query(off);
}
