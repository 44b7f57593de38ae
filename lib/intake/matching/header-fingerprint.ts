import type { Matching } from "./matching";

/** One text for all headers that hold the same columns in the same order, whatever their case, blanks and marks. */
export function headerFingerprint(header: readonly string[]): string {
  return JSON.stringify(header.map(plainHeader));
}

export interface RememberedColumns {
  /** By place in the new header: the target that was accepted before, which may be none. */
  readonly kept: ReadonlyMap<number, string | undefined>;
  /** Places that have to be looked at anew. */
  readonly open: readonly number[];
  /** Headers that were matched before and are there no longer. */
  readonly gone: readonly string[];
}

/** What a remembered matching still says about a header that may have changed since: only changed columns are open. */
export function rememberedColumns(header: readonly string[], matching: Matching): RememberedColumns {
  const before = new Map<string, (string | undefined)[]>();
  for (const { source, target } of matching.columns) {
    const name = plainHeader(source);
    before.set(name, [...(before.get(name) ?? []), target]);
  }
  const kept = new Map<number, string | undefined>();
  const open: number[] = [];
  for (const [place, name] of header.entries()) {
    const targets = before.get(plainHeader(name));
    if (targets === undefined || targets.length === 0) open.push(place);
    else kept.set(place, targets.shift());
  }
  const left = new Set(
    [...before].filter(([, targets]) => targets.some((target) => target !== undefined)).map(([name]) => name),
  );
  const gone = matching.columns.filter(({ source, target }) => target !== undefined && left.has(plainHeader(source)));
  return { kept, open, gone: gone.map(({ source }) => source) };
}

function plainHeader(name: string): string {
  return name
    .normalize("NFKC")
    .trim()
    .toLowerCase()
    .replace(/[\s_]+/g, " ");
}
