import { type CountDistribution, countQuantile } from "@/lib/statistics/demand/count-distribution";

/** Demand in twenty futures of equal chance, least first: its quantiles at 2.5 %, 7.5 % … 97.5 %. */
export function twentyFutures(demand: CountDistribution): readonly number[] {
  return Array.from({ length: 20 }, (_, i) => countQuantile(demand, (i + 0.5) / 20));
}
