import { createHash } from "node:crypto";
import { sql } from "drizzle-orm";
import type { Transaction } from "../../database-types";

/** What somebody would have to add, sentence by sentence, under its key. */
export interface MissingList {
  readonly missing_key: string;
  readonly missing: readonly string[];
}

/** Far more than a company's jobs differ in; where they differ in more, lists are looked up in the database again. */
const mostRemembered = 20_000;

/**
 * Gives what is missing a key made from its words, so that rows name it and the words are stored once: thousands of jobs
 * lack the same, and their words would be most of what is stored of them.
 */
export class MissingLists {
  readonly #keys = new Map<string, string>();
  #added: MissingList[] = [];

  /** @returns null where nothing is missing */
  keyOf(missing: readonly string[]): string | null {
    if (missing.length === 0) return null;
    const words = missing.join("\n");
    const known = this.#keys.get(words);
    if (known !== undefined) return known;
    const key = keyOfWords(missing);
    if (this.#keys.size >= mostRemembered) this.#keys.clear();
    this.#keys.set(words, key);
    this.#added.push({ missing_key: key, missing });
    return key;
  }

  /** Lists that came since this was last asked; they must be stored before any row that names them. */
  takeAdded(): readonly MissingList[] {
    const added = this.#added;
    this.#added = [];
    return added;
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
