import type { ListedPart } from "@/db/queries/part-list";
import { randomOf } from "@/synthetic-data/random";

/** What lies where of one part, and what was ordered. Invented. */
export interface StockStory {
  readonly part: ListedPart;
  readonly countedDaysAgo: number;
  readonly shelf: number;
  readonly trucks: readonly { readonly technician: string; readonly pieces: number }[];
  readonly orders: readonly {
    readonly daysAgo: number;
    readonly leadDays: number;
    readonly pieces: number;
    /** Of them, those that have come. */
    readonly came: number;
  }[];
}

/** As many parts as a shop of this size keeps; the others it orders when they are needed. */
const mostKept = 70;

/**
 * Parts by use, each with what some weeks of need would be, some with too few and some with far too many, a few that
 * are hardly asked for any more, and orders of which some are still to come.
 */
export function stockStories(parts: readonly ListedPart[], technicians: readonly string[]): readonly StockStory[] {
  const random = randomOf(1, 90);
  const whole = (low: number, high: number) => low + Math.floor(random.share() * (high - low + 1));
  const byUse = parts.toSorted((a, b) => b.usedLastYear - a.usedLastYear || a.partKey.localeCompare(b.partKey));
  const kept = byUse.filter(({ usedLastYear }) => usedLastYear >= 2).slice(0, mostKept);
  const idle = byUse.filter(({ usedLastYear, lastUsedOn }) => usedLastYear <= 1 && lastUsedOn !== undefined).slice(-6);
  return [
    ...kept.map((part, rank): StockStory => {
      const month = part.usedLastYear / 12;
      const plenty = rank % 11 === 5 ? 12 : rank % 4 === 1 ? 0.2 : 1.2;
      const lead = 3 + (rank % 5) * 3;
      return {
        part,
        countedDaysAgo: whole(12, 30),
        shelf: Math.ceil(month * plenty * (0.7 + random.share())) + whole(0, 1),
        trucks: rank < 16 ? technicians.map((technician) => ({ technician, pieces: whole(0, 2) })) : [],
        orders: [
          ...(rank % 3 === 0
            ? Array.from({ length: 9 }, (_, i) => {
                const pieces = Math.max(1, Math.round(month));
                return { daysAgo: 300 - 30 * i, leadDays: lead + whole(0, 6), pieces, came: pieces };
              })
            : []),
          ...(rank % 6 === 2
            ? [{ daysAgo: 6, leadDays: lead + 4, pieces: Math.max(2, Math.ceil(month)), came: rank % 12 === 2 ? 1 : 0 }]
            : []),
        ],
      };
    }),
    ...idle.map((part) => ({ part, countedDaysAgo: 40, shelf: whole(2, 5), trucks: [], orders: [] })),
  ];
}
