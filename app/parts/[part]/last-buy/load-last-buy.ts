import type { Reader } from "@/db/database-types";
import { loadExposureCells } from "@/db/queries/exposure-cells";
import { loadNumberTaking } from "@/db/queries/number-taking";
import { addDays } from "@/lib/calendar/day";
import { dayNumber } from "@/lib/calendar/day-number";
import type { LifeQuestion } from "@/lib/failures/visit-spells";
import { type EndDemand, endDemand } from "@/lib/forecast/end-demand";
import { failuresByMonth } from "@/lib/forecast/fleet/fleet-record";
import { type FleetToEnd, fleetToEnd } from "@/lib/forecast/fleet/fleet-to-end";
import { fewestFailuresForFleet } from "@/lib/forecast/fleet/part-fleet";
import { partTaking } from "@/lib/forecast/fleet/part-taking";
import { type PartUse, partUse } from "@/lib/forecast/fleet/part-use";
import { PiecesTaken } from "@/lib/forecast/fleet/pieces-taken";
import { monthAfter } from "@/lib/forecast/forecast-month";
import { type LastTimeBuy, lastTimeBuy } from "@/lib/stock/last-time-buy";
import type { KnownPart } from "../load-part";

export type LastBuy =
  | { readonly kind: "no-component" }
  | { readonly kind: "no-machines" }
  | { readonly kind: "no-repairs" }
  | { readonly kind: "too-few-failures"; readonly failures: number; readonly needed: number }
  | {
      readonly kind: "last-buy";
      readonly maker: string | undefined;
      readonly failures: number;
      /** Machines that left while they were watched. */
      readonly retired: number;
      readonly running: number;
      readonly use: PartUse;
      readonly pieces: number;
      readonly end: EndDemand;
      readonly buy: LastTimeBuy;
    };

const futures = 200;

/** How many of a part today's fleet will take until its last machine has left, and how many to buy for that. */
export async function loadLastBuy(db: Reader, { part, today }: KnownPart): Promise<LastBuy> {
  const { component, spellings, history, historyFrom, forecastFrom } = part;
  if (component === undefined) return { kind: "no-component" };
  const taking = partTaking(await loadNumberTaking(db, spellings, forecastFrom));
  const { maker } = taking;
  const pieces = new PiecesTaken(taking.pieces);
  const cells = await loadExposureCells(db, { maker, onlyComponents: [component] });
  const question = questionOf({ component, maker, until: dayNumber(addDays(today, 1)) });
  const monthStarts = Array.from({ length: history.length + 1 }, (_, month) =>
    dayNumber(monthAfter(historyFrom, month)),
  );
  const failed = failuresByMonth(
    cells,
    questionOf({ ...question, maker, until: dayNumber(forecastFrom) }),
    monthStarts,
  );
  const use = partUse(history, { failures: failed }, { origin: history.length, pieces: pieces.mean });
  if (use === undefined) return { kind: "no-repairs" };
  const fleet = fleetToEnd(cells, question);
  const running = runningIn(fleet);
  if (running === 0) return { kind: "no-machines" };
  const failures = sum(fleet.lives.failed);
  if (failures < fewestFailuresForFleet) return { kind: "too-few-failures", failures, needed: fewestFailuresForFleet };
  const end = endDemand({ fleet, use, pieces, futures, seed: 1 });
  const { shortOneIn, pack } = part.plan;
  const buy = lastTimeBuy({
    demand: end.demand,
    onHand: Math.max(0, part.onHand ?? 0) + part.onOrder,
    unitCents: part.unitCostCents ?? 0,
    aim: { kind: "service", service: 1 - 1 / shortOneIn },
    pack,
  });
  const retired = sum(fleet.stays.failed);
  return { kind: "last-buy", maker, failures, retired, running, use, pieces: pieces.mean, end, buy };
}

function questionOf({
  component,
  maker,
  until,
}: {
  readonly component: string;
  readonly maker: string | undefined;
  readonly until: number;
}): LifeQuestion {
  return { component, where: { maker, component }, from: undefined, until, level: 0.9 };
}

function runningIn({ cohorts }: FleetToEnd): number {
  return cohorts.reduce((all, { running }) => all + sum(running), 0);
}

function sum(counts: Float64Array): number {
  return counts.reduce((all, count) => all + count, 0);
}
