// Reads. Every page's reads happen in one `readOnly`, so that all its figures come from one state of the data.
import { type SQL, sql } from "drizzle-orm";
import { drizzle } from "drizzle-orm/postgres-js";
import type { Sql } from "postgres";
import { databaseUrl } from "./connection";
import { isConnectionLost } from "./connection-lost";
import type { Reader } from "./database-types";
import { postgresJsClient } from "./postgres-js-client";
import { processWide } from "./process-wide";
import * as schema from "./schema/all";

/** The database did not answer within the time limit of a read. */
export class ReadTimeout extends Error {
  override readonly name = "ReadTimeout";
}

type ReadLimits = { readonly timeoutSeconds: number };

const pool = processWide("reader", async () =>
  postgresJsClient(await databaseUrl(), { max: 8, applicationName: "ohmsworth read" }),
);

/**
 * Runs reads in one read-only transaction on one snapshot.
 * `work` is run a second time, from the start, when the connection breaks: it must do nothing but read.
 * @param timeoutSeconds  limit for each statement; the whole gets ten seconds more
 * @throws ReadTimeout past the limit
 */
export async function readOnly<T>(
  work: (db: Reader) => Promise<T>,
  { timeoutSeconds }: ReadLimits = { timeoutSeconds: 15 },
): Promise<T> {
  try {
    return await readOnce(work, timeoutSeconds);
  } catch (error) {
    if (!isConnectionLost(error)) throw error;
    return await readOnce(work, timeoutSeconds);
  }
}

/** Closes the connections for reading; the next read opens new ones. */
export async function closeReader(): Promise<void> {
  const client = await pool.take()?.catch(() => undefined);
  await client?.end({ timeout: 5 });
}

/**
 * All reads run inside `begin`: outside of it this driver puts extra nulls before the next result after a statement
 * that failed half-way. After a broken connection or a read that nobody answers the pool may be stuck for good, so
 * it is replaced rather than trusted.
 */
async function readOnce<T>(work: (db: Reader) => Promise<T>, timeoutSeconds: number): Promise<T> {
  const client = await opened();
  try {
    return await answeredWithin(timeoutSeconds + 10, () => transact(client, work, timeoutSeconds));
  } catch (error) {
    if (error instanceof ReadTimeout || isConnectionLost(error)) await replacePool(client);
    throw isStatementTimeout(error)
      ? new ReadTimeout(`The database needed longer than ${timeoutSeconds} s.`, { cause: error })
      : error;
  }
}

async function transact<T>(client: Sql, work: (db: Reader) => Promise<T>, timeoutSeconds: number): Promise<T> {
  return await drizzle(client, { schema }).transaction(
    async (tx) => {
      await tx.execute(sql`select set_config('statement_timeout', ${`${timeoutSeconds}s`}, true),
        set_config('idle_in_transaction_session_timeout', ${`${timeoutSeconds + 10}s`}, true),
        set_config('TimeZone', 'UTC', true), set_config('DateStyle', 'ISO', true)`);
      const rows = async <Row extends Record<string, unknown>>(statement: SQL) =>
        Array.from(await tx.execute(statement)) as unknown as Row[]; // the caller states the columns of its own SQL
      return await work(Object.assign(tx, { rows }));
    },
    { isolationLevel: "repeatable read", accessMode: "read only" },
  );
}

/** An opening that failed is forgotten, or every later read would fail with it. */
async function opened(): Promise<Sql> {
  try {
    return await pool.get();
  } catch (error) {
    pool.take();
    throw error;
  }
}

/** Reads that others still have under way on the old client get five seconds to end. */
async function replacePool(client: Sql): Promise<void> {
  if ((await pool.get().catch(() => undefined)) !== client) return; // another read has replaced it already
  pool.take();
  client.end({ timeout: 5 }).catch(() => {});
}

async function answeredWithin<T>(seconds: number, start: () => Promise<T>): Promise<T> {
  let timer: NodeJS.Timeout | undefined;
  const tooLate = new Promise<never>((_, reject) => {
    timer = setTimeout(
      () => reject(new ReadTimeout(`The database did not answer within ${seconds} s.`)),
      seconds * 1000,
    );
  });
  try {
    return await Promise.race([start(), tooLate]);
  } finally {
    clearTimeout(timer);
  }
}

function isStatementTimeout(error: unknown): boolean {
  for (let cause = error; cause instanceof Error; cause = cause.cause) {
    if ((cause as { code?: unknown }).code === "57014") return true;
  }
  return false;
}
