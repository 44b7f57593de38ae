import type { Reader } from "@/db/database-types";
import { loadExposureCells } from "@/db/queries/exposure-cells";
import { loadMakerOfPart, loadPartRepairs, type PartRepairs } from "@/db/queries/part-repairs";
import { addDays } from "@/lib/calendar/day";
import { dayNumber } from "@/lib/calendar/day-number";
import { type EndDemand, endDemand } from "@/lib/forecast/end-demand";
import { type FleetFacts, fleetFacts } from "@/lib/forecast/fleet-facts";
import { type LastTimeBuy, lastTimeBuy } from "@/lib/stock/last-time-buy";
import type { KnownPart } from "../load-part";

export type LastBuy =
  | { readonly kind: "no-component" }
  | { readonly kind: "no-repairs"; readonly maker: string | undefined }
  | {
      readonly kind: "no-life";
      readonly facts: Exclude<FleetFacts, { kind: "fleet" }>;
      readonly maker: string | undefined;
    }
  | {
      readonly kind: "last-buy";
      readonly maker: string | undefined;
      readonly facts: Extract<FleetFacts, { kind: "fleet" }>;
      readonly repairs: PartRepairs;
      readonly end: EndDemand;
      readonly buy: LastTimeBuy;
      readonly unitsNow: number;
    };

/** Repairs of the last years say how often the part is taken: older ones used older parts. */
const usageDays = 730;
const futures = 200;

/** How many of a part today's fleet will take until its last unit has left, and how many to buy for that. */
export async function loadLastBuy(db: Reader, { part, today }: KnownPart): Promise<LastBuy> {
  const { component, spellings } = part;
  if (component === undefined) return { kind: "no-component" };
  const maker = await loadMakerOfPart(db, spellings);
  const since = addDays(today, -usageDays);
  const repairs = await loadPartRepairs(db, { component, maker, spellings, since, until: today });
  if (repairs.withPart === 0) return { kind: "no-repairs", maker };
  const cells = await loadExposureCells(db, { maker, onlyComponent: component });
  const until = dayNumber(addDays(today, 1));
  const facts = fleetFacts(cells, { component, where: { maker, component }, from: undefined, until, level: 0.9 });
  if (facts.kind !== "fleet") return { kind: "no-life", facts, maker };
  const end = endDemand({
    facts,
    usesPart: { of: repairs.failures, counted: repairs.withPart },
    pieces: repairs.pieces / repairs.withPart,
    futures,
    seed: 1,
  });
  const { shortOneIn, pack } = part.plan;
  const buy = lastTimeBuy({
    demand: end.demand,
    onHand: Math.max(0, part.onHand ?? 0) + part.onOrder,
    unitCents: part.unitCostCents ?? 0,
    aim: { kind: "service", service: 1 - 1 / shortOneIn },
    pack,
  });
  const unitsNow = facts.inService.reduce((sum, { units }) => sum + units, 0);
  return { kind: "last-buy", maker, facts, repairs, end, buy, unitsNow };
}
