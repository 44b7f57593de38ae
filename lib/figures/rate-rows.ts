import type { EstimateFrame } from "@/lib/format/estimate-scale";
import { type CountedNoun, describeEstimate, type EstimateWords, formatEstimate } from "@/lib/format/format-estimate";
import type { Estimate } from "@/lib/statistics/estimate";
import { type EstimateGrade, gradeOf } from "@/lib/statistics/estimate-grade";
import { type RateAxis, rateAxis } from "./rate-axis";

/** One group of a comparison, as a page has it. */
export interface RateGroup {
  readonly key: string;
  readonly label: string;
  readonly estimate: Estimate;
  /** Address of a page about the group. */
  readonly href?: string | undefined;
  /** Address of the jobs that were counted. */
  readonly jobsHref?: string | undefined;
}

/** One row, ready to draw and to be read aloud. */
export interface RateRow extends RateGroup {
  readonly grade: EstimateGrade;
  readonly words: EstimateWords;
  readonly spoken: string;
}

export type RateComparison = RateRows | { readonly kind: "no-groups" };

export interface RateRows {
  readonly kind: "rows";
  readonly axis: RateAxis;
  readonly rows: readonly RateRow[];
  /** Thin groups: never ranked and never hidden; by name. */
  readonly tooFew: readonly RateRow[];
  readonly fleet: RateRow | undefined;
}

export interface RateRowsOptions {
  /** `given` keeps the caller's fixed order. Never by point: the smallest groups would lead. */
  readonly order: "name" | "lowest-believable" | "given";
  readonly fleet?: RateGroup | undefined;
  readonly frame?: EstimateFrame | undefined;
  readonly counted?: CountedNoun | undefined;
  readonly against?: string | undefined;
}

/** Rows on one axis, in a fair order, with the groups that are too small to judge set apart. */
export function rateRows(groups: readonly RateGroup[], options: RateRowsOptions): RateComparison {
  if (groups.length === 0) return { kind: "no-groups" };
  const include = options.fleet === undefined ? [] : [options.fleet.estimate];
  const axis = rateAxis(
    groups.map((group) => group.estimate),
    { ...options, include, steps: 5 },
  );
  const toRow = (group: RateGroup): RateRow => {
    const { counted, against } = options;
    const words = formatEstimate(group.estimate, { frame: axis.frame, counted, against });
    const spoken = `${group.label}: ${describeEstimate(words)}`;
    return { ...group, grade: gradeOf(group.estimate), words, spoken };
  };
  const rows = groups.map(toRow);
  return {
    kind: "rows",
    axis,
    rows: ordered(
      rows.filter((row) => row.grade !== "thin"),
      options.order,
    ),
    tooFew: ordered(
      rows.filter((row) => row.grade === "thin"),
      "name",
    ),
    fleet: options.fleet === undefined ? undefined : toRow(options.fleet),
  };
}

function ordered(rows: readonly RateRow[], order: RateRowsOptions["order"]): RateRow[] {
  if (order === "given") return [...rows];
  const byName = [...rows].sort((a, b) => a.label.localeCompare(b.label, "en"));
  return order === "name" ? byName : byName.sort((a, b) => b.estimate.lo - a.estimate.lo);
}
