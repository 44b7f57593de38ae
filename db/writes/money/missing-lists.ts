import { createHash } from "node:crypto";
import { sql } from "drizzle-orm";
import type { Transaction } from "../../database-types";

/** What somebody would have to add, sentence by sentence, under its key. */
export interface MissingList {
  readonly missing_key: string;
  readonly missing: readonly string[];
}

/** Far more sentences than a company's jobs differ in; where they differ in more, lists are looked up in the database again. */
const mostRemembered = 100_000;

/** A sentence after those before it, with the key of the list that ends here. */
interface Step {
  key: string | undefined;
  readonly next: Map<string, Step>;
}

/**
 * Gives what is missing a key made from its words, so that rows name it and the words are stored once: thousands of jobs
 * lack the same, and their words would be most of what is stored of them. Lists are followed sentence by sentence, since
 * most sentences come again as the same value, and then are not read.
 */
export class MissingLists {
  #first: Step = { key: undefined, next: new Map() };
  #remembered = 0;
  #added: MissingList[] = [];

  /** @returns null where nothing is missing */
  keyOf(missing: readonly string[]): string | null {
    if (missing.length === 0) return null;
    let step = this.#first;
    for (const sentence of missing) step = step.next.get(sentence) ?? this.#stepFrom(step, sentence);
    if (step.key === undefined) {
      step.key = keyOfWords(missing);
      this.#added.push({ missing_key: step.key, missing });
    }
    return step.key;
  }

  /** Lists that came since this was last asked; they must be stored before any row that names them. */
  takeAdded(): readonly MissingList[] {
    const added = this.#added;
    this.#added = [];
    if (this.#remembered > mostRemembered) {
      this.#first = { key: undefined, next: new Map() };
      this.#remembered = 0;
    }
    return added;
  }

  #stepFrom(before: Step, sentence: string): Step {
    const step = { key: undefined, next: new Map() };
    before.next.set(sentence, step);
    this.#remembered += 1;
    return step;
  }
}

/** In the order of their keys, so that those who store the same lists at once do not wait for each other in a ring. */
export async function storeMissingLists(tx: Transaction, lists: readonly MissingList[]): Promise<void> {
  if (lists.length === 0) return;
  await tx.rows(sql`
    insert into missing_lists (missing_key, missing)
    select missing_key, missing from jsonb_populate_recordset(null::missing_lists, ${JSON.stringify(lists)}::jsonb) order by 1
    on conflict (missing_key) do nothing`);
}

function keyOfWords(missing: readonly string[]): string {
  const hash = createHash("sha256").update(JSON.stringify(missing)).digest();
  return String(hash.readBigUInt64BE() & (2n ** 63n - 1n));
}
