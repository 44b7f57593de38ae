// The kinds of file that can be loaded, in the order in which they build on each other.
import type { z } from "zod";
import { componentRow } from "./parse-component-row";
import { contractRow } from "./parse-contract-row";
import { jobRow } from "./parse-job-row";
import { partLineRow } from "./parse-part-line-row";
import { partRow } from "./parse-part-row";
import { photoRow } from "./parse-photo-row";
import { rangeRow } from "./parse-range-row";
import { readingRow } from "./parse-reading-row";
import { unitFactsRow } from "./parse-unit-facts-row";
import { unitRow } from "./parse-unit-row";

export const fileKinds = [
  "shop",
  "components",
  "units",
  "jobs",
  "part-lines",
  "readings",
  "ranges",
  "policies",
  "photos",
  "parts",
  "contracts",
  "unit-facts",
] as const;
export type FileKind = (typeof fileKinds)[number];

export type TableKind = Exclude<FileKind, "shop" | "policies">;

export const fileKindNames: Readonly<Record<FileKind, string>> = {
  shop: "The company",
  components: "Components",
  units: "Units",
  jobs: "Jobs",
  "part-lines": "Part lines",
  readings: "Readings",
  ranges: "Expected ranges",
  policies: "Coverage policies",
  photos: "Photos",
  parts: "Parts and prices",
  contracts: "Service contracts",
  "unit-facts": "Facts of units for cover",
};

/** Columns of each kind of table, in the order in which they are documented. */
export const rowSchemas: Readonly<Record<TableKind, z.ZodObject>> = {
  components: componentRow,
  units: unitRow,
  jobs: jobRow,
  "part-lines": partLineRow,
  readings: readingRow,
  ranges: rangeRow,
  photos: photoRow,
  parts: partRow,
  contracts: contractRow,
  "unit-facts": unitFactsRow,
};

export const tableKinds = Object.keys(rowSchemas) as readonly TableKind[]; // Object.keys loses the key type

export function isFileKind(word: string): word is FileKind {
  return (fileKinds as readonly string[]).includes(word);
}

export function isTableKind(kind: FileKind): kind is TableKind {
  return kind in rowSchemas;
}

export function columnsOf(kind: TableKind): readonly string[] {
  return Object.keys(rowSchemas[kind].shape);
}

/** Columns that a file of this kind must have. */
export function neededColumns(kind: TableKind): readonly string[] {
  return Object.entries(rowSchemas[kind].shape)
    .filter(([, cell]) => (cell as z.ZodType)._zod.optin !== "optional") // a shape holds zod types, which its own type does not say
    .map(([column]) => column);
}
