import { Client } from "pg";

type Options = { readonly url: string; readonly applicationName: string };

/** Connections of one kind at most, and how long an unused one is kept. */
const most = 8;
const idleMs = 60_000;
/** Whoever waits longer for a place is told so: every place is bounded by its statements' limits. */
const longestWaitMs = 30_000;

/**
 * Connections for one transaction at a time, kept for the next while they are sound.
 * The driver's own pool was measured to leave waiting callers unanswered after many connections had broken; here a
 * place is counted as free the moment its connection is given back, whatever the state of that connection.
 */
export class Connections {
  readonly #options: Options;
  readonly #idle = new Map<Client, NodeJS.Timeout>();
  readonly #waiting: (() => void)[] = [];
  #taken = 0;
  #closed = false;

  constructor(options: Options) {
    this.#options = options;
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
      this.#idle.set(client, setTimeout(() => this.#discard(client), idleMs).unref());
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
    if (this.#taken < most) {
      this.#taken += 1;
      return;
    }
    await new Promise<void>((resolve, reject) => {
      const handOver = () => {
        clearTimeout(timer);
        resolve(); // the place is handed on, still counted
      };
      const timer = setTimeout(() => {
        this.#waiting.splice(this.#waiting.indexOf(handOver), 1);
        reject(new Error(`The database is busy: all ${most} connections were in use for ${longestWaitMs / 1000} s.`));
      }, longestWaitMs);
      this.#waiting.push(handOver);
    });
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
      connectionString: this.#options.url,
      application_name: this.#options.applicationName,
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
