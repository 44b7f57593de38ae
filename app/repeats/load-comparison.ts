import type { AddressValues } from "@/app/_address/address-reader";
import type { Reader } from "@/db/database-types";
import { loadExposureCells } from "@/db/queries/exposure-cells";
import { type CatalogueWords, loadCatalogueWords } from "@/db/queries/known-words";
import type { Day } from "@/lib/calendar/day";
import { type ComparedGroup, compareGroups, type GroupComparison } from "@/lib/failures/compare-groups";
import { type ComparisonVerdict, comparisonVerdict } from "@/lib/failures/comparison-verdict";
import { type MissingAnswer, missingAnswer } from "@/lib/failures/missing-answer";
import type { LifeQuestion } from "@/lib/failures/visit-spells";
import { readLifeAddress } from "./life-address";
import { readAgainst } from "./read-comparison";
import { sidesOfDay } from "./sides-of-day";
import { twoGroups } from "./two-groups";

export type ComparisonKind = "compare" | "before-after";

export type ComparisonView =
  | { readonly kind: "unknown-component" }
  | { readonly kind: "no-data"; readonly name: string }
  | LoadedComparison;

export interface LoadedComparison {
  readonly kind: "loaded";
  readonly name: string;
  readonly words: CatalogueWords;
  readonly cutOff: Day;
  readonly notices: readonly string[];
  /** The first group as the address narrows it, over the whole period. */
  readonly question: LifeQuestion;
  /** What the address says of the second: `with` as text, or the day. */
  readonly second: string | undefined;
  readonly outcome: ComparisonOutcome;
}

export type ComparisonOutcome =
  | { readonly kind: "compared"; readonly comparison: GroupComparison; readonly verdict: ComparisonVerdict }
  /** There is no second group, or it is not another one. */
  | { readonly kind: "not-two"; readonly finding: string; readonly wayOn: string }
  /** One side has nothing to count. */
  | { readonly kind: "missing"; readonly side: ComparedGroup; readonly missing: MissingAnswer };

/** Two groups, or one group before and after a day: reads what the answer needs. @returns the answer, to be reckoned when no transaction waits for it */
export async function readComparison(
  db: Reader,
  kind: ComparisonKind,
  { component, values, today }: { readonly component: string; readonly values: AddressValues; readonly today: Day },
): Promise<() => ComparisonView> {
  const words = await loadCatalogueWords(db, today);
  const name = words.components.find((entry) => entry.key === component)?.name;
  if (name === undefined) return () => ({ kind: "unknown-component" });
  const { cutOff } = words;
  if (cutOff === undefined) return () => ({ kind: "no-data", name });
  const own = kind === "compare" ? "with" : "on";
  const { question, notices } = readLifeAddress(component, values, { words, cutOff, own: [own] });
  const cells = await loadExposureCells(db, { onlyComponents: [component, ...otherComponent(kind, values, words)] });
  const asked = { name, question, words, cells };
  const read = kind === "compare" ? twoGroups(values, asked) : sidesOfDay(values, asked);
  return () => ({
    kind: "loaded",
    name,
    words,
    cutOff,
    question,
    notices: [...notices, ...read.notices],
    second: read.second,
    outcome: "groups" in read ? outcomeOf(read.groups) : { kind: "not-two", ...read.notTwo },
  });
}

/** A group may be set against another component of the same units. */
function otherComponent(kind: ComparisonKind, values: AddressValues, words: CatalogueWords): readonly string[] {
  if (kind !== "compare") return [];
  const { against } = readAgainst(values, words);
  return against.kind === "component" ? [against.value] : [];
}

function outcomeOf([first, second]: readonly [ComparedGroup, ComparedGroup]): ComparisonOutcome {
  for (const side of [first, second]) {
    const missing = missingAnswer(side.cells, side.question);
    if (missing !== undefined && missing.kind !== "before-first-failure") return { kind: "missing", side, missing };
  }
  const comparison = compareGroups(first, second);
  return { kind: "compared", comparison, verdict: comparisonVerdict(comparison) };
}
