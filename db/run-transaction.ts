import type { SQL } from "drizzle-orm";
import { drizzle } from "drizzle-orm/node-postgres";
import type { PgTransactionConfig } from "drizzle-orm/pg-core";
import { type Client, escapeLiteral } from "pg";
import { currentActor } from "./actor";
import type { Connections } from "./connections";
import type { Transaction } from "./database-types";
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

/**
 * One transaction on one connection from beginning to end: what `readOnly` and `inTransaction` have in common. A page has
 * several, so that what each costs before its first statement counts: the settings go with the beginning, and drizzle is not
 * told the schema, which it would read through each time for a way of asking that nothing here uses.
 */
export async function runTransaction<T>(
  connections: Connections,
  { timeoutSeconds, ...config }: Kind,
  work: (tx: Transaction) => Promise<T>,
): Promise<T> {
  const client = await connections.take();
  const gate = new TransactionGate(client, { limitMs: (timeoutSeconds + 5) * 1000, opening: settings(timeoutSeconds) });
  try {
    const db = drizzle(gate as unknown as Client); // drizzle uses nothing of a client but its `query`
    return await db.transaction(async (tx) => {
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
function settings(timeoutSeconds: number): string {
  const limit = `${timeoutSeconds}s`;
  const all = {
    statement_timeout: limit,
    idle_in_transaction_session_timeout: limit,
    search_path: searchPath,
    TimeZone: "UTC",
    DateStyle: "ISO",
    "ohmsworth.actor": currentActor(),
  };
  return `select ${Object.entries(all)
    .map(([name, value]) => `set_config('${name}', ${escapeLiteral(value)}, true)`)
    .join(", ")}`;
}
