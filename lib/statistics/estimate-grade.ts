import type { Estimate } from "./estimate";

export type EstimateGrade = "firm" | "loose" | "thin";

/**
 * How much an estimate can bear. Firm: at least 10 events, a denominator of at least 30 and an interval no wider
 * than 160 % of the point. Thin: a denominator below 10, too little to give a rate at all. Loose: between the two.
 * Zero events are never firm, because the width relative to a point of zero has no meaning.
 * Source: Parker et al. (2017), US National Center for Health Statistics data presentation standards for
 * proportions, Vital Health Stat 2(175), and its companion for rates; merged into one table by this project.
 * Checked: tests/statistics/estimate-grade.test.ts, at each boundary.
 */
export function gradeOf(estimate: Estimate): EstimateGrade {
  if (!(estimate.n >= 10)) return "thin";
  const enough = estimate.events >= 10 && estimate.n >= 30;
  const narrow = estimate.hi - estimate.lo <= 1.6 * estimate.point;
  return enough && narrow ? "firm" : "loose";
}
