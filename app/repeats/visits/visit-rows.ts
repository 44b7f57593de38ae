import type { VisitDimension, VisitGroup } from "@/db/queries/visit-shares";
import { type Cause, causes } from "@/lib/domain/cause";
import type { PayerKind } from "@/lib/domain/job";
import { payerNames } from "@/lib/domain/payer-names";
import { type ProductType, productTypes } from "@/lib/domain/product-type";
import { type FunnelLimits, shareFunnel } from "@/lib/signals/share-funnel";
import { wilson } from "@/lib/statistics/intervals/wilson";

export interface ShareOf {
  readonly events: number;
  readonly trials: number;
  readonly point: number;
  readonly low: number;
  readonly high: number;
  /** Where a group of its size falls by chance alone, around the share of all. */
  readonly limits: FunnelLimits | undefined;
}

export interface VisitRow {
  readonly key: string;
  readonly names: readonly string[];
  readonly jobs: number;
  readonly firstVisit: ShareOf | undefined;
  readonly calledBack: ShareOf | undefined;
}

/** Groups in order of their names, never of their shares; each share with its range and the limits of its funnel. */
export function visitRows(
  groups: readonly VisitGroup[],
  by: readonly VisitDimension[],
): { readonly rows: readonly VisitRow[]; readonly all: VisitRow } {
  const all = groups.reduce<VisitGroup>(
    (sum, group) => ({
      names: [],
      jobs: sum.jobs + group.jobs,
      withVisits: sum.withVisits + group.withVisits,
      firstVisit: sum.firstVisit + group.firstVisit,
      calledBack: sum.calledBack + group.calledBack,
    }),
    { names: [], jobs: 0, withVisits: 0, firstVisit: 0, calledBack: 0 },
  );
  const shares = { first: all.firstVisit / all.withVisits, back: all.calledBack / all.jobs };
  const rowOf = (group: VisitGroup): VisitRow => {
    const names = by.map((dimension, i) => nameOf(dimension, group.names[i]));
    return {
      key: names.join(" · "),
      names,
      jobs: group.jobs,
      firstVisit: shareOf(group.firstVisit, group.withVisits, shares.first),
      calledBack: shareOf(group.calledBack, group.jobs, shares.back),
    };
  };
  const rows = groups.map(rowOf).toSorted((a, b) => (a.key < b.key ? -1 : 1));
  return { rows, all: { ...withoutLimits(rowOf(all)), key: "All together", names: ["All together"] } };
}

/** Limits say what chance gives around the share of all, so that share itself has none. */
function withoutLimits({ firstVisit, calledBack, ...row }: VisitRow): VisitRow {
  const bare = (share: ShareOf | undefined) => share && { ...share, limits: undefined };
  return { ...row, firstVisit: bare(firstVisit), calledBack: bare(calledBack) };
}

function shareOf(events: number, trials: number, overall: number): ShareOf | undefined {
  if (trials === 0) return undefined;
  const { point, low, high } = wilson({ events, trials, confidence: 0.95, continuityCorrection: false });
  const limits = overall > 0 && overall < 1 ? shareFunnel({ trials, share: overall }) : undefined;
  return { events, trials, point, low, high, limits };
}

function nameOf(dimension: VisitDimension, name: string | undefined | null): string {
  if (name === undefined || name === null) return "Not on file";
  if (dimension === "type") return productTypes[name as ProductType] ?? name; // as the schema allows
  if (dimension === "cause") return causes[name as Cause]?.name ?? name; // as the schema allows
  if (dimension === "payer") return payerNames[name as PayerKind] ?? name; // as the schema allows
  return name;
}

/** What a funnel says of one share. */
export function againstLimits({ point, limits }: ShareOf): string {
  if (limits === undefined) return "nothing to compare with";
  if (point > limits.high998) return "above what chance gives";
  if (point < limits.low998) return "below what chance gives";
  if (point > limits.high95) return "perhaps above";
  if (point < limits.low95) return "perhaps below";
  return "no sign of a difference";
}
