import type { OpenSignal } from "@/db/queries/open-signals";
import type { StoredFleet } from "@/lib/forecast/fleet/stored-fleet";
import type { StoredOutlook } from "@/lib/forecast/stored-outlook";
import { formatCount, formatCounted } from "@/lib/format/format-count";
import { formatDecimal } from "@/lib/format/format-decimal";

/** What drives the use of a part: the machines that carry it, each sentence a fact; or why they tell nothing of it. */
export function fleetWords(fleet: StoredFleet, component: string): readonly string[] {
  switch (fleet.kind) {
    case "fleet":
      return knownFleetWords(fleet, component);
    case "no-component":
      return [];
    case "no-machines":
      return [`No machine in service is on the register that carries its component (${component}).`];
    case "too-few-failures":
      return [
        `${formatCounted(fleet.failures, "failure")} of its component (${component}) ${fleet.failures === 1 ? "was" : "were"} known ten months ago; from ${fleet.needed} on it can be tested whether the lives of the machines tell what is needed.`,
      ];
    case "no-repairs":
      return [`No job of the last two whole years took it, or its component (${component}) did not fail in them.`];
  }
}

function knownFleetWords(fleet: Extract<StoredFleet, { kind: "fleet" }>, component: string): readonly string[] {
  const { maker, running, failures, shape, lastFailures, took, pieces, comingYearly, leavingYearly, seasonal } = fleet;
  const whose = maker === undefined ? "machines of several makers" : `machines of ${maker}`;
  const each = pieces > 1.005 ? `, ${formatDecimal(pieces, pieces % 1 === 0 ? 0 : 2)} pieces each` : "";
  return [
    `${component}: ${formatCounted(running, "piece runs", "pieces run")} in ${whose}. ${formatCounted(failures, "failure")} on record tell how long it lasts: ${shapeWords(shape)}.`,
    `In the last two years it failed ${formatCounted(lastFailures, "time")}, and ${formatCounted(took, "job")} took this part${each}.`,
    `${formatCounted(comingYearly, "machine")} came in the last year, and about ${formatDecimal(100 * leavingYearly, 0)} in 100 leave in one.${seasonal ? " Failures follow the year." : ""}`,
  ];
}

/** Bounds of "about alike" are our own choice, no source. */
function shapeWords(shape: number): string {
  const figure = `shape ${formatDecimal(shape, 1)}`;
  if (shape < 0.9) return `it mostly fails early (${figure})`;
  return shape <= 1.15 ? `age hardly matters (${figure})` : `it wears, and fails more with age (${figure})`;
}

/** Whether the forecast knows of a signal. */
export function signalInForecast({ key }: OpenSignal, outlook: StoredOutlook): string {
  if (outlook.kind !== "forecast" || outlook.fleet?.kind !== "fleet") return "Not in what is expected here.";
  const known = outlook.fleet.signals.some((signal) => signal.key === key);
  if (outlook.method !== "fleet-lives")
    return "What is expected here follows the part’s own months, so it knows of it only as far as they show it.";
  return known
    ? "What is expected here reckons that it goes on."
    : "What is expected here was worked out before it was found.";
}

/** "52 failures where 21.9 were expected". */
export function countsWords({ lead: { observed, expected } }: OpenSignal): string {
  return `${formatCounted(observed, "failure")} where ${formatDecimal(expected, 1)} were expected`;
}

/** Bands of the back-test leave signals out; said where it bears on the figures. */
export function testedWithout(fleet: StoredFleet | undefined): string | undefined {
  if (fleet?.kind !== "fleet" || fleet.signals.length === 0) return undefined;
  return `The test knows nothing of ${fleet.signals.length === 1 ? "the signal" : `the ${formatCount(fleet.signals.length)} signals`}, since it was not known then.`;
}
