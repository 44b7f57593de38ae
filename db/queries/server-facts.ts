import { sql } from "drizzle-orm";
import type { Reader } from "../database-types";

export interface ServerFacts {
  /** As the server says it, "18.4". */
  readonly version: string;
  readonly bytes: number;
  readonly connections: number;
  readonly mostConnections: number;
}

/** How large the database is and how much of the server's connections is in use. */
export async function loadServerFacts(db: Reader): Promise<ServerFacts> {
  const [facts] = await db.rows<ServerFacts & Record<string, unknown>>(sql`
    select split_part(current_setting('server_version'), ' ', 1) as version, pg_database_size(current_database())::double precision as bytes,
      (select sum(numbackends)::integer from pg_stat_database) as connections,
      current_setting('max_connections')::integer as "mostConnections"`);
  if (facts === undefined) throw new Error("the server told nothing of itself");
  return facts;
}
