import type { Transaction } from "@/db/database-types";
import { inTransaction } from "@/db/in-transaction";
import { run } from "../staging/run";

/** The load's own transaction is a third; more than two beside it gain nothing on the machines that this is meant for. */
const most = 2;

/** Each of them has a process of the server for itself. A wait for the load's own transaction, which waits for them, would be without end. */
const settings = `set local lock_timeout = '60s'; set local max_parallel_workers_per_gather = 0; set local max_parallel_maintenance_workers = 0;
  set local work_mem = '192MB'; set local maintenance_work_mem = '384MB'`;

/**
 * Work on tables that nobody else sees yet, beside the load's own transaction, so that the server works for it with
 * several processes. Each piece is a transaction of its own and sees only what is committed. It must never wait for a lock
 * of the load's transaction, which in turn waits for it.
 */
export class Lanes {
  readonly #timeoutSeconds: number;
  readonly #waiting: (() => void)[] = [];
  readonly #all = new Set<Promise<void>>();
  #running = 0;
  #ended = false;

  constructor({ timeoutSeconds }: { readonly timeoutSeconds: number }) {
    this.#timeoutSeconds = timeoutSeconds;
  }

  /** Statements that become one transaction as soon as there is a place. */
  run(...statements: readonly string[]): Promise<void> {
    return this.#add(statements, (turn) => this.#waiting.unshift(turn));
  }

  /** The same of what nobody waits for before the end. */
  runLater(...statements: readonly string[]): Promise<void> {
    return this.#add(statements, (turn) => this.#waiting.push(turn));
  }

  #add(statements: readonly string[], wait: (turn: () => void) => void): Promise<void> {
    const done = this.#inItsTurn(wait, async (tx) => {
      for (const statement of [settings, ...statements]) await run(tx, statement);
    });
    done.catch(() => {}); // whoever waits for it, or for all, is told
    this.#all.add(done);
    return done;
  }

  /** @throws the first failure */
  async settled(): Promise<void> {
    await Promise.all(this.#all);
  }

  /** Begins nothing more, and waits for what is under way. */
  async end(): Promise<void> {
    this.#ended = true;
    await Promise.allSettled(this.#all);
  }

  async #inItsTurn(wait: (turn: () => void) => void, work: (tx: Transaction) => Promise<void>): Promise<void> {
    if (this.#running < most) this.#running++;
    else await new Promise<void>(wait);
    try {
      if (this.#ended) throw new Error("The load has ended.");
      await inTransaction(work, { timeoutSeconds: this.#timeoutSeconds });
    } finally {
      const next = this.#waiting.shift();
      if (next === undefined) this.#running--;
      else next();
    }
  }
}
