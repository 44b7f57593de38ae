import { setTimeout as pause } from "node:timers/promises";
import { sql } from "drizzle-orm";
import { readOnly } from "@/db/client";

/** Looks at the process's memory and asks what a page would ask, again and again, until it is told to end. */
export class LoadWatch {
  #going = true;
  #megabytes = 0;
  readonly #waits: number[] = [];
  readonly #pauseMs: number;
  readonly #done: Promise<void>;

  constructor(pauseMs: number) {
    this.#pauseMs = pauseMs;
    this.#done = this.#look();
  }

  async end() {
    this.#going = false;
    await this.#done;
    const waits = this.#waits.toSorted((a, b) => a - b);
    return {
      megabytes: this.#megabytes,
      p95: waits[Math.floor(waits.length * 0.95)] ?? Number.NaN,
      longest: waits.at(-1) ?? Number.NaN,
    };
  }

  async #look(): Promise<void> {
    while (this.#going) {
      this.#megabytes = Math.max(this.#megabytes, process.memoryUsage().rss / 1e6);
      const before = performance.now();
      await readOnly((db) =>
        db.rows(
          sql`select j.job_number, u.serial from jobs j join units u using (unit_id) order by j.completed_on desc limit 50`,
        ),
      );
      this.#waits.push(performance.now() - before);
      await pause(this.#pauseMs);
    }
  }
}
