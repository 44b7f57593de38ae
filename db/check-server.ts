import { Client } from "pg";
import { SettingsError } from "./settings-error";

/**
 * Connects once and refuses a server on which the product's promises would not hold: too old, or one that answers
 * before a change is on disk.
 */
export async function checkServer(url: string): Promise<void> {
  const client = new Client({ connectionString: url, connectionTimeoutMillis: 10_000 });
  client.on("error", () => {}); // the query reports it
  try {
    await client.connect();
    const { rows } = await client.query<{ name: string; setting: string }>(
      "select name, setting from pg_settings where name in ('server_version_num', 'fsync', 'synchronous_commit')",
    );
    refuseUnsafe(new Map(rows.map(({ name, setting }) => [name, setting])));
  } catch (error) {
    if (error instanceof SettingsError) throw error;
    throw new SettingsError(`The database at ${placeOf(url)} does not answer: ${reasonOf(error)}`, { cause: error });
  } finally {
    await client.end().catch(() => {});
  }
}

export function refuseUnsafe(settings: ReadonlyMap<string, string>): void {
  const version = Number(settings.get("server_version_num"));
  if (!(version >= 150_000)) {
    throw new SettingsError(`PostgreSQL 15 or newer is needed; the server is version ${Math.floor(version / 10_000)}.`);
  }
  if (settings.get("fsync") !== "on") {
    throw new SettingsError("The server runs with fsync off: a power cut could destroy the database. Set fsync = on.");
  }
  const commit = settings.get("synchronous_commit") ?? "";
  if (commit === "off") {
    throw new SettingsError(
      "The server has synchronous_commit off: a change reported as stored could be lost. Set it to on.",
    );
  }
}

/** Host and database without the login and password, fit for a message. */
function placeOf(url: string): string {
  const { host, pathname, searchParams } = new URL(url);
  return `${searchParams.get("host") ?? host}${pathname}`;
}

function reasonOf(error: unknown): string {
  if (error instanceof AggregateError) return error.errors.map(reasonOf).join("; ");
  return error instanceof Error ? error.message : String(error);
}
