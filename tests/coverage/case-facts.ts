import { civilDay } from "@/lib/calendar/civil-day";
import { type Day, day } from "@/lib/calendar/day";
import { readRawDay } from "@/lib/calendar/raw-day";
import type { CoverageFacts, DatedFact, UnitDateName } from "@/lib/coverage/coverage-facts";
import { datedFact } from "@/lib/coverage/dated-fact";
import { type CoverageCase, type Loose, text } from "./coverage-case";

/** The facts of a case under the names that coverage uses. */
export function caseFacts({ policy, facts, group }: CoverageCase): CoverageFacts {
  const recorded = momentOf(facts, "reported", "event", "apparent", "rejected");
  const reported = recorded ?? momentOf(facts, "visit", "first_visit", "completed");
  if (reported === undefined) throw new Error("the case does not say when the trouble was reported");
  const outFrom = plain(facts, "out_for_repair_from");
  const returned = plain(facts, "returned");
  const isSame = facts.same_failure === true || facts.same_defect === true;
  const resold = plain(facts, "resold", "acquired");
  return {
    reported,
    reportedIsRecorded: recorded !== undefined,
    firstVisit: momentOf(facts, "visit", "first_visit"),
    completed: momentOf(facts, "completed"),
    component: text(facts, "failed_component", "component"),
    symptom: undefined,
    cause: "component",
    kind: kindOf(facts),
    authorizationNumber: text(facts, "authorization_no"),
    contracts: contractsOf(policy, facts),
    replacedPartFittedOn: plain(facts, "part_fitted_under_warranty", "part_fitted"),
    previousRepairOn: undefined,
    outForRepair:
      outFrom === undefined || returned === undefined ? [] : [{ from: outFrom, until: returned, sameTrouble: isSame }],
    unit: {
      maker: "Maker",
      model: "Model",
      productType: "front_load_washer",
      serial: text(facts, "serial") ?? "S1",
      serialRemoved: false,
      use: text(facts, "use") === "commercial" ? "commercial" : "household",
      territory: text(policy, "jurisdiction") ?? text(facts, "jurisdiction", "territory") ?? regimeTerritory(policy),
      dates: datesOf(facts, group),
      owner: {
        number: resold === undefined && text(facts, "reporter") !== "second_owner" ? 1 : 2,
        acquiredOn: resold,
        transferRegisteredOn: plain(facts, "transfer_registered"),
      },
      exchangedOn: plain(facts, "exchange_delivery"),
    },
  };
}

const names: Readonly<Record<UnitDateName, readonly string[]>> = {
  purchase: ["purchase", "anchor"],
  delivery: ["delivery", "delivered"],
  installation: ["installation", "installed"],
  occupancy: ["closing", "occupancy", "first_occupancy"],
  first_use: ["first_use"],
  registration: ["registered", "registration"],
  shipped: ["shipped_to_distributor", "shipped"],
  manufacture: ["manufacture", "manufactured"],
};

function datesOf(facts: Loose, group: string): CoverageFacts["unit"]["dates"] {
  const dates: Partial<Record<UnitDateName, DatedFact>> = {};
  for (const [name, given] of Object.entries(names) as [UnitDateName, readonly string[]][]) {
    // Object.entries loses the key type
    const cell = text(facts, ...given.flatMap((key) => [key, `${key}_raw`, `${key}_month`]));
    if (cell === undefined) continue;
    // A clean purchase date in a case stands for one shown by a receipt; a raw cell is only what somebody typed.
    const isRaw = text(facts, ...given) === undefined || group === "dirt";
    dates[name] = datedFact(readRawDay(cell), cell, isRaw ? undefined : "receipt");
  }
  return dates;
}

function contractsOf(policy: Loose, facts: Loose): CoverageFacts["contracts"] {
  const soldOn = plain(facts, "contract_sold") ?? plain(facts, "purchase");
  const hasContract = policy.contract_term ?? policy.maker_term ?? policy.waiting;
  if (soldOn === undefined || hasContract === undefined) return [];
  return [{ number: "C1", policy: "contract", soldOn, cancelledOn: undefined }];
}

function kindOf(facts: Loose): CoverageFacts["kind"] {
  const said = JSON.stringify(facts);
  if (/cosmetic|dent|scratch/.test(said)) return "cosmetic";
  return /adjust/.test(said) ? "adjustment" : "repair";
}

function regimeTerritory(policy: Loose): string | undefined {
  return /^Australia/.test(text(policy, "regime") ?? "") ? "AU" : undefined;
}

export function plain(facts: Loose, ...given: readonly string[]): Day | undefined {
  const value = text(facts, ...given);
  return value === undefined ? undefined : day(value);
}

/** A day as given, or the civil day of an instant at the service address. */
function momentOf(facts: Loose, ...given: readonly string[]): Day | undefined {
  const on = plain(facts, ...given);
  const at = text(facts, ...given.map((name) => `${name}_at`));
  if (on !== undefined || at === undefined) return on;
  const civil = civilDay(at, text(facts, "service_address_zone", "zone") ?? "UTC");
  if (civil.kind !== "day") throw new Error(`the case has no readable instant: ${at}`);
  return civil.on;
}
