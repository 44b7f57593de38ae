import type { Client, QueryConfig, QueryResult } from "pg";
import { isConnectionLost, isUnanswered } from "./connection-lost";

/**
 * Stands between one transaction and its connection, and lets no statement through that could land outside of it.
 * - Once the connection is lost, everything further fails at once with that first reason.
 * - Once closed, a late statement fails instead of running on a connection that may serve another transaction by then.
 * - A COMMIT that the server turned into a ROLLBACK, because an earlier statement had failed, is an error.
 * - The connection counts as sound afterwards only if the end of the transaction was seen.
 */
export class TransactionGate {
  /** Why the connection is lost, once it is. */
  lost: Error | undefined;
  commitSent = false;
  /** Set when the server answered COMMIT by rolling back. */
  refusal: Error | undefined;
  #ended = false;
  #closed = false;
  readonly #client: Client;
  readonly #limitMs: number;
  readonly #opening: string;
  readonly #lose = (error: Error) => {
    this.lost ??= error;
  };

  /**
   * @param limitMs  how long one statement may go unanswered, should the server be unable to keep its own limit
   * @param opening  a statement that goes to the server with the one that begins the transaction, as one message
   */
  constructor(client: Client, { limitMs, opening }: { readonly limitMs: number; readonly opening: string }) {
    this.#client = client;
    this.#limitMs = limitMs;
    this.#opening = opening;
    client.on("error", this.#lose);
  }

  async query(statement: QueryConfig, values: unknown[]): Promise<QueryResult> {
    if (this.#closed)
      throw new Error(`A statement came after the end of its transaction (an await is missing): ${statement.text}`);
    if (this.lost !== undefined) throw this.lost;
    const ends = statement.text === "commit" || statement.text === "rollback";
    if (statement.text === "commit") this.commitSent = true;
    const begins = statement.text.startsWith("begin ");
    const result = await this.#send(
      begins ? { ...statement, text: `${statement.text}; ${this.#opening}` } : statement,
      values,
    );
    if (ends) this.#ended = true;
    if (statement.text === "commit" && result.command !== "COMMIT") {
      this.refusal = new Error(
        "Nothing was stored: a statement of this transaction failed and its error was not passed on.",
      );
      throw this.refusal;
    }
    return result;
  }

  /** @returns true if the connection may serve another transaction */
  close(): boolean {
    this.#closed = true;
    this.#client.off("error", this.#lose);
    return this.#ended && this.lost === undefined;
  }

  async #send(statement: QueryConfig, values: unknown[]): Promise<QueryResult> {
    try {
      const limited = { ...statement, query_timeout: this.#limitMs };
      return await this.#client.query(limited, values);
    } catch (error) {
      if (error instanceof Error && (isConnectionLost(error) || isUnanswered(error))) this.#lose(error);
      throw error;
    }
  }
}
