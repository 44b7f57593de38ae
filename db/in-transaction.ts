// Changes. This is the only place that opens a transaction for writing.
import { databaseUrl } from "./connection";
import { Connections } from "./connections";
import type { Transaction } from "./database-types";
import { processWidePromise } from "./process-wide";
import { runTransaction } from "./run-transaction";

type WriteLimits = {
  /** Limit for each statement, and for a pause between two. */
  readonly timeoutSeconds: number;
  readonly isolationLevel?: "read committed" | "repeatable read" | "serializable";
};

const connections = processWidePromise(
  "writer",
  async () => new Connections({ url: await databaseUrl(), applicationName: "ohmsworth write" }),
);

/**
 * Runs `work` and commits all of it, or nothing.
 * A connection is never replaced under a running transaction: once it is lost every further statement fails. So does
 * a statement that is sent after the end because it was not awaited. An error of the database that `work` caught and
 * kept to itself still fails the whole.
 * @throws what `work` threw, or the database's error; CommitUnknown (./run-transaction) if the answer to the commit was lost
 */
export async function inTransaction<T>(
  work: (tx: Transaction) => Promise<T>,
  { timeoutSeconds, isolationLevel = "read committed" }: WriteLimits = { timeoutSeconds: 60 },
): Promise<T> {
  return await runTransaction(
    await connections.get(),
    { timeoutSeconds, isolationLevel, accessMode: "read write" },
    work,
  );
}

/** Closes the connections for writing; the next change opens new ones. */
export async function closeWriter(): Promise<void> {
  await (await connections.take())?.close();
}
