import { createHmac } from "node:crypto";
import type { WordPrint } from "../schema/keeping";

/** What stands where something was erased. */
export const erasedMark = "[erased]";

/** Shorter ones would be found in half of all texts. */
const shortestAnywhere = 5;
const shortestOfOwn = 3;

const runs = /[\p{L}\p{N}]+/gu;

/**
 * Prints of a customer's names, numbers and addresses as somebody typed them. Each is looked for everywhere as a whole,
 * and its single words in the customer's own jobs: "Ms. Miller says" names nobody elsewhere, and does there.
 * @param salt  64 hexadecimal digits, drawn for this customer
 * @throws RangeError for what is too short to be told from other words
 */
export function printsOf(words: readonly string[], salt: string): readonly WordPrint[] {
  const prints = new Map<string, WordPrint>();
  for (const phrase of words) {
    const parts = partsOf(phrase).map(({ plain }) => plain);
    const whole = parts.join("");
    if (whole.length < shortestAnywhere)
      throw new RangeError(
        `words: “${phrase}” has fewer than ${shortestAnywhere} letters or digits, which would be found in texts about others`,
      );
    const single = parts.filter((part) => part.length >= shortestOfOwn && /\p{L}/u.test(part));
    for (const [plain, own] of [[whole, false] as const, ...single.map((part) => [part, true] as const)]) {
      const print = { length: plain.length, sha256: printOf(plain, salt), own };
      if (!prints.has(print.sha256) || !own) prints.set(print.sha256, print);
    }
  }
  return [...prints.values()];
}

/** Replaces in texts what has a print. Blanks, signs, accents and capitals between and in the words make no difference. */
export class Eraser {
  readonly #salt: string;
  readonly #everywhere: PrintSet;
  readonly #own: PrintSet;

  constructor({ salt, prints }: { readonly salt: string; readonly prints: readonly WordPrint[] }) {
    this.#salt = salt;
    this.#everywhere = printSet(prints.filter(({ own }) => !own));
    this.#own = printSet(prints);
  }

  /** @param own  true for a text of one of the customer's own jobs. @returns the text itself where nothing was found */
  erase(text: string, own: boolean): string {
    const { lengths, longest, hashes } = own ? this.#own : this.#everywhere;
    const parts = partsOf(text);
    const found: { readonly from: number; readonly to: number }[] = [];
    for (let first = 0; first < parts.length; first++) {
      let joined = "";
      for (let last = first; last < parts.length && joined.length < longest; last++) {
        joined += parts[last]?.plain ?? "";
        if (lengths.has(joined.length) && hashes.has(printOf(joined, this.#salt)))
          found.push({ from: parts[first]?.from ?? 0, to: parts[last]?.to ?? 0 });
      }
    }
    return found.length === 0 ? text : cut(text, found);
  }

  /** The same in every string of a JSON value; names of its members stay. */
  eraseJson(value: unknown, own: boolean): unknown {
    if (typeof value === "string") return this.erase(value, own);
    if (Array.isArray(value)) return value.map((item) => this.eraseJson(item, own));
    if (typeof value !== "object" || value === null) return value;
    return Object.fromEntries(Object.entries(value).map(([name, item]) => [name, this.eraseJson(item, own)]));
  }
}

interface PrintSet {
  readonly lengths: ReadonlySet<number>;
  readonly longest: number;
  readonly hashes: ReadonlySet<string>;
}

function printSet(prints: readonly WordPrint[]): PrintSet {
  return {
    lengths: new Set(prints.map(({ length }) => length)),
    longest: Math.max(0, ...prints.map(({ length }) => length)),
    hashes: new Set(prints.map(({ sha256 }) => sha256)),
  };
}

function printOf(plain: string, salt: string): string {
  return createHmac("sha256", salt).update(plain).digest("hex");
}

function partsOf(text: string): readonly { readonly plain: string; readonly from: number; readonly to: number }[] {
  return [...text.matchAll(runs)].map((match) => ({
    plain: match[0].normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase(),
    from: match.index,
    to: match.index + match[0].length,
  }));
}

function cut(text: string, found: readonly { readonly from: number; readonly to: number }[]): string {
  let result = "";
  let at = 0;
  for (const { from, to } of found.toSorted((a, b) => a.from - b.from || b.to - a.to)) {
    if (from >= at) result += text.slice(at, from) + erasedMark;
    at = Math.max(at, to);
  }
  return result + text.slice(at);
}
