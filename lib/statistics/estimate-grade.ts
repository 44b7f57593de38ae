import type { Estimate } from "./estimate";
import { ratioGrade } from "./ratio-grade";

export type EstimateGrade = "firm" | "loose" | "thin";

export const firmEvents = 10;
export const firmDenominator = 30;
/** Widest firm range, as a multiple of the point. */
export const firmRelativeWidth = 1.6;
export const thinDenominator = 10;

/**
 * How much an estimate can bear. Of rates and shares, firm: at least 10 events, a denominator of at least 30 and an
 * interval no wider than 160 % of the point. Thin: a denominator below 10, too little to give a rate at all. Loose:
 * between the two. Zero events are never firm, because the width relative to a point of zero has no meaning. Ratios
 * have a rule of their own, since their denominator is a number of events: see ratioGrade.
 * Source: Parker et al. (2017), US National Center for Health Statistics data presentation standards for
 * proportions, Vital Health Stat 2(175), and its companion for rates; merged into one table by this project.
 * Checked: tests/statistics/estimate-grade.test.ts, at each boundary.
 */
export function gradeOf(estimate: Estimate): EstimateGrade {
  if (estimate.basis.kind === "ratio") return ratioGrade(estimate);
  if (!(estimate.n >= thinDenominator)) return "thin";
  const enough = estimate.events >= firmEvents && estimate.n >= firmDenominator;
  const narrow = estimate.hi - estimate.lo <= firmRelativeWidth * estimate.point;
  return enough && narrow ? "firm" : "loose";
}
