import type { RefusedFit } from "@/lib/statistics/life/fit-location-scale";
import type { WeibullFit } from "@/lib/statistics/life/fit-weibull";

/** What the fitted shape lets one say about age; words only when the whole range lies on one side of 1. */
export type LifeShape = "fails early" | "wears out" | "age makes no clear difference" | "not fitted";

export function describeShape(fit: WeibullFit | RefusedFit): LifeShape {
  if (fit.kind === "refused") return "not fitted";
  const { low, high } = fit.shape.profile;
  if (high !== "unbounded" && high < 1) return "fails early";
  if (low !== "unbounded" && low > 1) return "wears out";
  return "age makes no clear difference";
}
