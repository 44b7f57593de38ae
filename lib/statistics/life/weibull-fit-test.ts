import type { LifeRow } from "../survival/life-rows";
import { type AndersonDarling, andersonDarling } from "./anderson-darling";
import type { RefusedFit } from "./fit-location-scale";
import { fitWeibull } from "./fit-weibull";

/**
 * Fits a Weibull to complete failure ages and tests it by Anderson–Darling.
 * @param rows           one per life or group of lives, all failed, all watched from age 0
 * @param minimumEvents  fewest failures to accept: whole number, 1 or more; no default
 * @returns the test with the parameters it used; `incomplete`: some lives are censored or entered late, and the published
 *          significance does not hold for them; or why there is no fit
 */
export function weibullFitTest(
  rows: readonly LifeRow[],
  { minimumEvents }: { readonly minimumEvents: number },
): WeibullFitTest {
  if (rows.some(({ entry, event, count }) => count > 0 && (!event || entry > 0))) return { kind: "incomplete" };
  const fit = fitWeibull(rows, { confidence: 0.95, minimumEvents });
  if (fit.kind === "refused") return fit;
  const ages = rows.flatMap(({ exit, count }) => new Array<number>(count).fill(exit));
  const [shape, scale] = [fit.shape.value, fit.scale.value];
  return { kind: "tested", shape, scale, ...andersonDarling({ ages, shape, scale }) };
}

export type WeibullFitTest =
  | ({ readonly kind: "tested"; readonly shape: number; readonly scale: number } & AndersonDarling)
  | { readonly kind: "incomplete" }
  | RefusedFit;
