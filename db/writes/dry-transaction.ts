import type { Transaction } from "../database-types";
import { inTransaction } from "../in-transaction";

class Undone<T> extends Error {
  constructor(readonly value: T) {
    super("Done to see what would come of it.");
  }
}

/** Runs `work` and undoes whatever it changed: what would come of it, from the same code that does it. */
export async function dryTransaction<T>(
  work: (tx: Transaction) => Promise<T>,
  limits: { readonly timeoutSeconds: number },
): Promise<T> {
  try {
    return await inTransaction<never>(async (tx) => {
      throw new Undone(await work(tx));
    }, limits);
  } catch (error) {
    if (error instanceof Undone) return error.value as T; // thrown above with what `work` gave
    throw error;
  }
}
