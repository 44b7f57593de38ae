import { type SQL, sql } from "drizzle-orm";
import { drizzle } from "drizzle-orm/node-postgres";
import type { PgTransactionConfig } from "drizzle-orm/pg-core";
import type { Client } from "pg";
import { currentActor } from "./actor";
import type { Connections } from "./connections";
import type { Transaction } from "./database-types";
import * as schema from "./schema/all";
import { searchPath } from "./search-path";
import { TransactionGate } from "./transaction-gate";
import { withoutValues } from "./without-values";

/**
 * The connection broke while the commit was on its way: the change is stored whole or not at all, and nobody can tell
 * which. Whoever asked may ask again, since every change that comes twice is done once.
 */
export class CommitUnknown extends Error {
  override readonly name = "CommitUnknown";
}

type Kind = PgTransactionConfig & { readonly timeoutSeconds: number };

/** One transaction on one connection from beginning to end: what `readOnly` and `inTransaction` have in common. */
export async function runTransaction<T>(
  connections: Connections,
  { timeoutSeconds, ...config }: Kind,
  work: (tx: Transaction) => Promise<T>,
): Promise<T> {
  const client = await connections.take();
  const gate = new TransactionGate(client, (timeoutSeconds + 5) * 1000);
  try {
    const db = drizzle(gate as unknown as Client, { schema }); // drizzle uses nothing of a client but its `query`
    return await db.transaction(async (tx) => {
      await tx.execute(settings(timeoutSeconds));
      const rows = async <Row extends Record<string, unknown>>(statement: SQL) =>
        (await tx.execute(statement)).rows as Row[]; // the caller states the columns of its own SQL
      return await work(Object.assign(tx, { rows }));
    }, config);
  } catch (error) {
    if (gate.lost !== undefined && gate.commitSent) {
      throw new CommitUnknown("The connection to the database was lost during the commit.", { cause: gate.lost });
    }
    throw withoutValues(gate.refusal ?? error);
  } finally {
    connections.giveBack(client, gate.close());
  }
}

/** For this transaction only, so that a connection goes back as it came. Days and instants are written one way on every server. */
function settings(timeoutSeconds: number): SQL {
  const limit = `${timeoutSeconds}s`;
  return sql`select set_config('statement_timeout', ${limit}, true),
    set_config('idle_in_transaction_session_timeout', ${limit}, true),
    set_config('search_path', ${searchPath}, true), set_config('TimeZone', 'UTC', true), set_config('DateStyle', 'ISO', true), set_config('ohmsworth.actor', ${currentActor()}, true)`;
}
