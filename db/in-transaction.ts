// Changes. This is the only place that opens a transaction for writing, on a driver of its own: see DEVELOPERS.md.
import { type SQL, sql } from "drizzle-orm";
import { drizzle } from "drizzle-orm/node-postgres";
import type { Client } from "pg";
import { databaseUrl } from "./connection";
import type { Transaction } from "./database-types";
import { processWide } from "./process-wide";
import * as schema from "./schema/all";
import { WriteConnections } from "./write-connections";
import { WriteGate } from "./write-gate";

/**
 * The connection broke while the commit was on its way: the change is stored whole or not at all, and nobody can tell
 * which. Whoever asked may ask again, since every change that comes twice is done once.
 */
export class CommitUnknown extends Error {
  override readonly name = "CommitUnknown";
}

type WriteLimits = {
  /** Limit for each statement, and for a pause between two. */
  readonly timeoutSeconds: number;
  readonly isolationLevel?: "read committed" | "repeatable read" | "serializable";
};

const connections = processWide(
  "writer",
  async () => new WriteConnections(await databaseUrl(), { max: 8, idleSeconds: 60 }),
);

/**
 * Runs `work` and commits all of it, or nothing.
 * A connection is never replaced under a running transaction: once it is lost every further statement fails. So does
 * a statement that is sent after the end because it was not awaited. An error of the database that `work` caught and
 * kept to itself still fails the whole.
 * @throws what `work` threw, or the database's error; CommitUnknown if the answer to the commit was lost
 */
export async function inTransaction<T>(
  work: (tx: Transaction) => Promise<T>,
  { timeoutSeconds, isolationLevel = "read committed" }: WriteLimits = { timeoutSeconds: 60 },
): Promise<T> {
  const open = await opened();
  const client = await open.take();
  const gate = new WriteGate(client, (timeoutSeconds + 5) * 1000);
  try {
    const db = drizzle(gate as unknown as Client, { schema }); // drizzle uses nothing of a client but its `query`
    return await db.transaction(
      async (tx) => {
        await tx.execute(settings(timeoutSeconds));
        const rows = async <Row extends Record<string, unknown>>(statement: SQL) =>
          (await tx.execute(statement)).rows as Row[]; // the caller states the columns of its own SQL
        return await work(Object.assign(tx, { rows }));
      },
      { isolationLevel, accessMode: "read write" },
    );
  } catch (error) {
    if (gate.lost !== undefined && gate.commitSent) {
      throw new CommitUnknown("The connection to the database was lost during the commit.", { cause: gate.lost });
    }
    throw gate.refusal ?? error;
  } finally {
    open.giveBack(client, gate.close());
  }
}

/** Closes the connections for writing; the next change opens new ones. */
export async function closeWriter(): Promise<void> {
  const open = await connections.take()?.catch(() => undefined);
  await open?.close();
}

/** An opening that failed is forgotten, or every later change would fail with it. */
async function opened(): Promise<WriteConnections> {
  try {
    return await connections.get();
  } catch (error) {
    connections.take();
    throw error;
  }
}

/** For this transaction only, so that a connection goes back as it came. Days and instants are written one way on every server. */
function settings(timeoutSeconds: number): SQL {
  const limit = `${timeoutSeconds}s`;
  return sql`select set_config('statement_timeout', ${limit}, true),
    set_config('idle_in_transaction_session_timeout', ${limit}, true),
    set_config('TimeZone', 'UTC', true), set_config('DateStyle', 'ISO', true)`;
}
