import { Client } from "pg";

type Limits = { readonly max: number; readonly idleSeconds: number };

/**
 * Connections for one transaction at a time, kept for the next while they are sound.
 * The driver's own pool was measured to leave waiting callers unanswered after many connections had broken; here a
 * place is counted as free the moment its connection is given back, whatever the state of that connection.
 */
export class WriteConnections {
  readonly #url: string;
  readonly #limits: Limits;
  readonly #idle = new Map<Client, NodeJS.Timeout>();
  readonly #waiting: (() => void)[] = [];
  #taken = 0;
  #closed = false;

  constructor(url: string, limits: Limits) {
    this.#url = url;
    this.#limits = limits;
  }

  async take(): Promise<Client> {
    await this.#place();
    try {
      return this.#reuse() ?? (await this.#open());
    } catch (error) {
      this.#freePlace();
      throw error;
    }
  }

  /** @param sound  true only if the connection is known to be outside any transaction */
  giveBack(client: Client, sound: boolean): void {
    if (sound && !this.#closed) {
      this.#idle.set(client, setTimeout(() => this.#discard(client), this.#limits.idleSeconds * 1000).unref());
    } else {
      this.#discard(client);
    }
    this.#freePlace();
  }

  /** Ends the idle connections now and the others when they are given back. */
  async close(): Promise<void> {
    this.#closed = true;
    const idle = [...this.#idle.keys()];
    for (const client of idle) this.#forget(client);
    await Promise.all(idle.map((client) => client.end().catch(() => {})));
  }

  async #place(): Promise<void> {
    if (this.#taken < this.#limits.max) this.#taken += 1;
    else await new Promise<void>((resolve) => this.#waiting.push(resolve)); // the place is handed on, still counted
  }

  #freePlace(): void {
    const next = this.#waiting.shift();
    if (next === undefined) this.#taken -= 1;
    else next();
  }

  #reuse(): Client | undefined {
    const [client] = this.#idle.keys();
    if (client !== undefined) this.#forget(client);
    return client;
  }

  async #open(): Promise<Client> {
    const client = new Client({
      connectionString: this.#url,
      application_name: "ohmsworth write",
      connectionTimeoutMillis: 10_000,
      keepAlive: true,
    });
    client.on("error", () => this.#forget(client)); // for life: an error that nobody hears ends the process
    client.on("end", () => this.#forget(client));
    await client.connect();
    return client;
  }

  #forget(client: Client): void {
    clearTimeout(this.#idle.get(client));
    this.#idle.delete(client);
  }

  #discard(client: Client): void {
    this.#forget(client);
    client.end().catch(() => {});
  }
}
