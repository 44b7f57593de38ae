import type { CatalogueWords } from "@/db/queries/known-words";
import type { ExposureCells } from "@/lib/failures/cells";
import type { ComparedGroup } from "@/lib/failures/compare-groups";
import type { LifeQuestion } from "@/lib/failures/visit-spells";

/** What a comparison starts from: the first group's question and the counts of the whole fleet. */
export interface AskedComparison {
  readonly name: string;
  readonly question: LifeQuestion;
  readonly words: CatalogueWords;
  readonly cells: ExposureCells;
}

/** The two groups that an address means, or why it means no two. */
export type ReadGroups = { readonly notices: readonly string[]; readonly second: string | undefined } & (
  | { readonly groups: readonly [ComparedGroup, ComparedGroup] }
  | { readonly notTwo: { readonly finding: string; readonly wayOn: string } }
);
