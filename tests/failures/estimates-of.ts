// Every estimate that lib/statistics makes of lives or histories, by name, so that two sources can be held together number
// by number.
import { fitExponential } from "@/lib/statistics/life/fit-exponential";
import { fitLognormal } from "@/lib/statistics/life/fit-lognormal";
import { fitWeibull } from "@/lib/statistics/life/fit-weibull";
import { meanCumulativeFunction } from "@/lib/statistics/recurrence/mean-cumulative-function";
import type { UnitHistory } from "@/lib/statistics/recurrence/unit-history";
import { ageBands } from "@/lib/statistics/survival/age-bands";
import type { LifeSource } from "@/lib/statistics/survival/age-flows";
import { bandHazards } from "@/lib/statistics/survival/band-hazards";
import { kaplanMeier } from "@/lib/statistics/survival/kaplan-meier";
import { lifeTable } from "@/lib/statistics/survival/life-table";
import { nelsonAalen } from "@/lib/statistics/survival/nelson-aalen";
import { numbersAtAges } from "@/lib/statistics/survival/numbers-at-ages";

const confidence = 0.95;
const breaks = [0, 366, 731, 1096, 1827, 2922, 10_000];
const families = { weibull: fitWeibull, lognormal: fitLognormal, exponential: fitExponential };

/** Sums over ages: these agree but for the order of additions. */
export function curvesOf(source: LifeSource): unknown {
  const bands = ageBands(source, breaks);
  return {
    kaplanMeier: kaplanMeier(source, { confidence, interval: "log-log" }),
    nelsonAalen: nelsonAalen(source, { confidence, interval: "log" }),
    lifeTable: lifeTable(bands),
    hazards: bandHazards(bands, { confidence }),
    numbers: numbersAtAges(source, breaks.slice(0, -1)),
  };
}

/** Fitted lives, each with everything that its page shows. */
export function fitsOf(source: LifeSource): unknown {
  return Object.entries(families).map(([family, estimate]) => {
    const found = estimate(source, { confidence, minimumEvents: 5, failedAtZero: { within: 0.5 } });
    if (found.kind === "refused") return { family, reason: found.reason, lives: found.lives, events: found.events };
    const { core: _, ...told } = found;
    return told;
  });
}

export function recurrenceOf(histories: readonly UnitHistory[]): unknown {
  return (["robust", "poisson"] as const).map((variance) =>
    meanCumulativeFunction(histories, { confidence, variance, interval: "log" }),
  );
}

/** The first place where two results differ by more than this fraction, or undefined: words and structure count too. */
export function firstDifference(one: unknown, other: unknown, relative: number, place = ""): string | undefined {
  if (typeof one === "number" && typeof other === "number") {
    const apart = Math.abs(one - other);
    // Rounding near zero is measured against 1e-6, far below any rate, share or age shown.
    return apart <= relative * Math.max(Math.abs(one), Math.abs(other), 1e-6)
      ? undefined
      : `${place}: ${one} and ${other}`;
  }
  if (typeof one !== "object" || typeof other !== "object" || one === null || other === null)
    return Object.is(one, other) ? undefined : `${place}: ${String(one)} and ${String(other)}`;
  const [a, b] = [Object.entries(one), new Map(Object.entries(other))];
  if (a.length !== b.size) return `${place}: ${a.length} and ${b.size} entries`;
  for (const [key, value] of a) {
    const found = firstDifference(value, b.get(key), relative, `${place}.${key}`);
    if (found !== undefined) return found;
  }
  return undefined;
}
