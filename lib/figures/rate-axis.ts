// Results to chart-ready points: labels, positions and arms, so that a drawing only places what it is given.
import { type EstimateFrame, frameFor, scaleOf } from "@/lib/format/estimate-scale";
import { formatDecimal } from "@/lib/format/format-decimal";
import { unitWords } from "@/lib/format/format-estimate";
import type { Estimate } from "@/lib/statistics/estimate";
import { gradeOf } from "@/lib/statistics/estimate-grade";

/** One linear axis from 0, shared by all marks of a table or chart. Values stay in the natural unit of the estimates. */
export interface RateAxis {
  readonly max: number;
  readonly frame: EstimateFrame;
  /** "in 100 a year" */
  readonly unit: string;
  readonly ticks: readonly AxisTick[];
}

export interface AxisTick {
  /** 0 at the left end, 1 at the right. */
  readonly at: number;
  readonly label: string;
}

export interface AxisOptions {
  /** A value that must be on the axis although no row bears it, such as the fleet's. */
  readonly include?: readonly Estimate[] | undefined;
  /** Intervals between ticks at most: 2 for a mark in a table cell, 5 for a chart. */
  readonly steps?: number | undefined;
  readonly frame?: EstimateFrame | undefined;
  readonly against?: string | undefined;
}

/**
 * An axis that holds every firm interval whole and every point that may be drawn. A loose interval may run past its
 * end, where the drawing cuts it with an arrow: one group with three failures must not flatten all the others.
 */
export function rateAxis(estimates: readonly Estimate[], options: AxisOptions = {}): RateAxis {
  const all = [...estimates, ...(options.include ?? [])];
  const [first] = all;
  if (first === undefined) throw new RangeError("estimates: an axis needs at least one estimate");
  const frame = options.frame ?? frameFor(all);
  const scale = scaleOf(first, frame);
  const ceiling = first.basis.kind === "share" ? frame : Number.POSITIVE_INFINITY;
  const { step, count } = niceSteps(Math.min(reach(all) * scale, ceiling), options.steps ?? 2);
  const max = step * count;
  const decimals = step >= 1 ? (Number.isInteger(step) ? 0 : 1) : step >= 0.1 ? 2 : 3;
  const ticks = Array.from({ length: count + 1 }, (_, i) => ({ at: i / count, label: tickLabel(step * i, decimals) }));
  return { max: max / scale, frame, unit: unitWords(first, frame, { against: options.against }), ticks };
}

/** Share of the axis at which a value stands, kept between its ends. */
export function positionOn(axis: RateAxis, value: number): number {
  return Math.min(1, Math.max(0, value / axis.max));
}

function reach(estimates: readonly Estimate[]): number {
  const judged = estimates.filter((estimate) => gradeOf(estimate) !== "thin");
  const firm = judged.filter((estimate) => gradeOf(estimate) === "firm");
  const points = judged.map((estimate) => estimate.point * 1.1);
  const whole = (firm.length > 0 ? firm : judged.length > 0 ? judged : estimates).map((estimate) => estimate.hi);
  const largest = Math.max(...points, ...whole, 0);
  if (firm.length === 0 || judged.length === 0) return largest > 0 ? largest : 1;
  const loose = judged.map((estimate) => estimate.hi).filter((hi) => hi <= 2 * largest);
  return Math.max(largest, ...loose);
}

function niceSteps(reachTo: number, steps: number): { readonly step: number; readonly count: number } {
  const rough = reachTo / steps;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = power * ([1, 2, 2.5, 5, 10].find((nice) => nice * power >= rough * (1 - 1e-9)) ?? 10);
  return { step, count: Math.max(1, Math.ceil(reachTo / step - 1e-9)) };
}

function tickLabel(value: number, decimals: number): string {
  return value === 0 ? "0" : formatDecimal(value, decimals);
}
