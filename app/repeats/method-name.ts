import type { EstimateMethod } from "@/lib/statistics/estimate";

/** How a range was made, as the literature calls it; explained under How we count. */
export function methodName(method: EstimateMethod): string {
  if (method === "poisson-exact") return "exact Poisson";
  if (method === "poisson-robust") return "by-unit (robust)";
  return method.replaceAll("-", " ");
}
