// Reads. Every page's reads happen in one `readOnly`, so that all its figures come from one state of the data.
import { databaseUrl } from "./connection";
import { isConnectionLost, isTimeout } from "./connection-lost";
import { Connections } from "./connections";
import type { Reader } from "./database-types";
import { processWidePromise } from "./process-wide";
import { runTransaction } from "./run-transaction";

/** The database did not answer within the time limit of a read. */
export class ReadTimeout extends Error {
  override readonly name = "ReadTimeout";
}

const connections = processWidePromise(
  "reader",
  async () => new Connections({ url: await databaseUrl(), applicationName: "ohmsworth read" }),
);

/**
 * Runs reads in one read-only transaction on one snapshot.
 * `work` is run a second time, from the start, when the connection breaks: it must do nothing but read.
 * @param timeoutSeconds  limit for each statement
 * @throws ReadTimeout past the limit
 */
export async function readOnly<T>(
  work: (db: Reader) => Promise<T>,
  { timeoutSeconds }: { readonly timeoutSeconds: number } = { timeoutSeconds: 15 },
): Promise<T> {
  const once = async () =>
    runTransaction(
      await connections.get(),
      { timeoutSeconds, isolationLevel: "repeatable read", accessMode: "read only" },
      work,
    );
  try {
    return await once().catch((error) => (isConnectionLost(error) ? once() : Promise.reject(error)));
  } catch (error) {
    if (isTimeout(error))
      throw new ReadTimeout(`The database needed longer than ${timeoutSeconds} s.`, { cause: error });
    throw error;
  }
}

/** Closes the connections for reading; the next read opens new ones. */
export async function closeReader(): Promise<void> {
  await (await connections.take())?.close();
}
