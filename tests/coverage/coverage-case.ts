import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

/** One dated case as it is written in tests/reference/coverage-cases.json and coverage-variants.json. */
export interface CoverageCase {
  readonly id: string;
  readonly group: string;
  readonly title: string;
  readonly policy: Loose;
  readonly facts: Loose;
  readonly expect: Loose;
  readonly rule: string;
  readonly source: string;
}

/** The cases come in many shapes; names are looked up, never assumed. */
export type Loose = Readonly<Record<string, unknown>>;

export function loadCoverageCases(file: "coverage-cases" | "coverage-variants"): readonly CoverageCase[] {
  const path = fileURLToPath(new URL(`../reference/${file}.json`, import.meta.url));
  return (JSON.parse(readFileSync(path, "utf8")) as { cases: CoverageCase[] }).cases; // the file is ours and has this shape
}

/** The first of several names under which a case may give a text. */
export function text(from: Loose, ...names: readonly string[]): string | undefined {
  for (const name of names) {
    const value = from[name];
    if (typeof value === "string") return value;
  }
  return undefined;
}

export function group(from: Loose, name: string): Loose | undefined {
  const value = from[name];
  return typeof value === "object" && value !== null && !Array.isArray(value) ? (value as Loose) : undefined; // checked
}
