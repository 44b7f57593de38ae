import type { FileKind } from "@/lib/intake/file-kinds";

interface Noun {
  readonly one: string;
  readonly many: string;
}

const nouns: Readonly<Partial<Record<FileKind, Noun>>> = {
  shop: { one: "company", many: "companies" },
  "part-lines": { one: "part line", many: "part lines" },
  policies: { one: "policy", many: "policies" },
  ranges: { one: "range", many: "ranges" },
};

/** What one row of a file of that kind is called. */
export function rowNoun(kind: FileKind): Noun {
  const word = kind.replace(/s$/, "");
  return nouns[kind] ?? { one: word, many: `${word}s` };
}
