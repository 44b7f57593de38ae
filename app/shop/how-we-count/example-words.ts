import { daysPerYear } from "@/lib/failures/rate-question";
import { formatCount, formatCounted } from "@/lib/format/format-count";
import { formatDecimal } from "@/lib/format/format-decimal";
import { describeEstimate, formatEstimate } from "@/lib/format/format-estimate";
import { describeShare } from "@/lib/format/format-share";
import type { CountedView, LiveExample } from "./load-counted-view";

/** Sentences with live figures, each undefined where the data have no such figure. */
export interface ExampleWords {
  readonly rate?: string | undefined;
  readonly spread?: string | undefined;
  readonly shareFailed?: string | undefined;
  readonly ageBand?: string | undefined;
  readonly fittedLife?: string | undefined;
  readonly repeats?: string | undefined;
}

export function exampleWords({ example }: CountedView): ExampleWords {
  if (example === undefined) return {};
  return {
    rate: rateWords(example),
    spread: spreadWords(example),
    shareFailed: shareWords(example),
    ageBand: bandWords(example),
    fittedLife: lifeWords(example),
    repeats: repeatWords(example),
  };
}

const named = ({ name, model }: LiveExample) => `${name} of ${model}`;

function rateWords(example: LiveExample): string | undefined {
  if (example.rate.kind !== "rate") return undefined;
  return `${named(example)}: ${describeEstimate(formatEstimate(example.rate.estimate))}.`;
}

function spreadWords(example: LiveExample): string | undefined {
  if (example.rate.kind !== "rate") return undefined;
  const { dispersion, estimate } = example.rate;
  const shown = estimate.method === "poisson-robust" ? "the range by unit is shown" : "the exact range is shown";
  return `${named(example)}: failures vary between units ${formatDecimal(dispersion, 2)} times as much as chance alone would have it; ${shown}.`;
}

/** At five years, or at the last whole year of age that was watched. */
function exampleYears(lastAge: number): number {
  return Math.max(1, Math.min(5, Math.floor(lastAge / daysPerYear)));
}

function shareWords(example: LiveExample): string | undefined {
  const { curve } = example.life;
  if (curve.kind !== "curve") return undefined;
  const years = exampleYears(curve.lastAge);
  const step = curve.steps.filter(({ age }) => age <= years * daysPerYear).at(-1);
  if (step === undefined || step.limits.kind !== "limits") return undefined;
  const share = describeShare(1 - step.survival, 1 - step.limits.high, 1 - step.limits.low);
  return `${named(example)}: ${share} failed by ${formatCounted(years, "year")} of age; ${formatCount(step.atRisk)} were that old and still running.`;
}

function bandWords(example: LiveExample): string | undefined {
  const first = example.hazards.find(({ estimate }) => estimate !== undefined);
  if (first?.estimate === undefined) return undefined;
  return `${named(example)}, ${first.band.name.toLowerCase()}: ${describeEstimate(formatEstimate(first.estimate))}.`;
}

function lifeWords(example: LiveExample): string | undefined {
  const { weibull, shape } = example.life;
  if (weibull.kind === "refused") return undefined;
  const { low, high } = weibull.shape.profile;
  if (low === "unbounded" || high === "unbounded") return undefined;
  const range = `${formatDecimal(low, 2)} to ${formatDecimal(high, 2)}`;
  const years = formatDecimal(weibull.scale.value / daysPerYear, 1);
  return `${named(example)}: shape ${formatDecimal(weibull.shape.value, 2)} (${range}), scale ${years} years, from ${formatCounted(weibull.events, "failure")}: ${shape}.`;
}

function repeatWords(example: LiveExample): string | undefined {
  const { recurrence } = example.life;
  if (recurrence.kind !== "curve") return undefined;
  const years = exampleYears(recurrence.lastAge);
  const step = recurrence.steps.filter(({ age }) => age <= years * daysPerYear).at(-1);
  if (step === undefined || step.limits.kind !== "limits") return undefined;
  const per100 = (mean: number) => formatDecimal(100 * mean, 0);
  return `${named(example)}: ${per100(step.mean)} failures (${per100(step.limits.low)} to ${per100(step.limits.high)}) per 100 units by ${formatCounted(years, "year")} of age, repeats included.`;
}
