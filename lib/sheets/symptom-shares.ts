// What turned out to be behind a symptom, as shares of its closed jobs whose ranges hold all together.
import type { Cause } from "@/lib/domain/cause";
import { causes } from "@/lib/domain/cause";
import { componentOf } from "@/lib/domain/components";
import type { Estimate } from "@/lib/statistics/estimate";
import { sharesOfWhole } from "@/lib/statistics/share-estimate";
import type { AgeBand } from "./sheet-basis";

/** Closed jobs of one symptom on one kind of appliance that are alike in everything that is asked. */
export interface SymptomGroup {
  readonly modelId: number;
  readonly model: string;
  readonly ageBand: AgeBand;
  readonly season: Season;
  /** component:drain_pump or cause:foreign_object. */
  readonly of: string;
  readonly jobs: number;
  /** Of them, closed on the first visit. */
  readonly firstVisit: number;
}

export const seasons = ["Jan–Mar", "Apr–Jun", "Jul–Sep", "Oct–Dec"] as const;
export type Season = (typeof seasons)[number];

export interface BehindSymptom {
  readonly of: string;
  readonly name: string;
  /** component: a failure of the part. outside: a cause outside it. none: nothing found, or not determined. */
  readonly kind: "component" | "outside" | "none";
  readonly share: Estimate;
}

/** The usual level; the ranges of all classes hold together at it (Goodman). */
export const symptomLevel = 0.95;

/** The commonest first; empty where there is no job. One class alone is the whole and has no share to estimate. */
export function behindSymptom(groups: readonly SymptomGroup[]): readonly BehindSymptom[] {
  const counts = new Map<string, number>();
  for (const { of, jobs } of groups) counts.set(of, (counts.get(of) ?? 0) + jobs);
  const sorted = [...counts].sort(([a, m], [b, n]) => n - m || (a < b ? -1 : 1));
  const [only] = sorted;
  if (only === undefined) return [];
  // A second class that never occurred, so that one class alone also has a range.
  const padded = sorted.length === 1 ? [only[1], 0] : sorted.map(([, jobs]) => jobs);
  const shares = sharesOfWhole({ counts: padded, level: symptomLevel });
  return sorted.flatMap(([of], place) => {
    const share = shares[place];
    return share === undefined ? [] : [{ of, ...namedClass(of), share }];
  });
}

export function namedClass(of: string): Pick<BehindSymptom, "name" | "kind"> {
  const [kind, key = ""] = of.split(":");
  if (kind === "component") return { name: componentOf(key)?.name ?? key, kind: "component" };
  const cause = Object.hasOwn(causes, key) ? causes[key as Cause] : undefined; // looked up the line before
  return { name: cause?.name ?? key, kind: cause?.kind === "outside" ? "outside" : "none" };
}
