import type { GroupRate } from "@/lib/failures/failure-rates";
import { ageBands } from "@/lib/failures/rate-question";
import { gradeOf } from "@/lib/statistics/estimate-grade";
import type { RateOrder } from "./read-rate-question";

/** By the lowest believable rate, so that luck in a small group cannot lead; groups too small to judge come last, by name. */
export function sortedGroups(groups: readonly GroupRate[], order: RateOrder): GroupRate[] {
  const judged = groups.filter(canBeJudged);
  const rest = groups.filter((group) => !canBeJudged(group));
  return [
    ...judged.sort(order === "name" ? byName : (a, b) => lowest(b) - lowest(a) || byName(a, b)),
    ...rest.sort(byName),
  ];
}

export function canBeJudged(group: GroupRate): boolean {
  return group.kind === "rate" && gradeOf(group.estimate) !== "thin";
}

export function nameOf(group: GroupRate): string {
  return group.key.map((part) => part.name).join(" · ");
}

function lowest(group: GroupRate): number {
  return group.kind === "rate" ? group.estimate.lo : 0;
}

/** By name, part by part; ages from young to old, which their names would not do. */
function byName(a: GroupRate, b: GroupRate): number {
  for (const [index, part] of a.key.entries()) {
    const other = b.key[index];
    const apart =
      part.dimension === "age"
        ? ageOrder(part.value) - ageOrder(other?.value)
        : part.name.localeCompare(other?.name ?? "", "en");
    if (apart !== 0) return apart;
  }
  return 0;
}

function ageOrder(key: string | undefined): number {
  return ageBands.findIndex((band) => band.key === key);
}
