import { day } from "@/lib/calendar/day";
import type { CoverageFacts, UnitFacts } from "@/lib/coverage/coverage-facts";
import { knownDay } from "@/lib/coverage/known-date";

interface Changes extends Partial<Omit<CoverageFacts, "unit">> {
  readonly unit?: Partial<UnitFacts>;
}

const visited = day("2025-11-24");

/** A drain pump that failed in its first year; tests change the one thing they are about. */
export function sampleFacts({ unit, ...changes }: Changes = {}): CoverageFacts {
  return {
    reported: day("2025-11-21"),
    reportedIsRecorded: true,
    firstVisit: changes.reported !== undefined && changes.reported > visited ? undefined : visited,
    completed: day("2025-11-28"),
    component: "drain_pump",
    symptom: "will_not_drain",
    cause: "component",
    kind: "repair",
    authorizationNumber: undefined,
    contracts: [],
    replacedPartFittedOn: undefined,
    previousRepairOn: undefined,
    outForRepair: [],
    ...changes,
    unit: {
      maker: "Maker",
      model: "W100",
      productType: "front_load_washer",
      serial: "A1234567",
      serialRemoved: false,
      use: "household",
      territory: undefined,
      dates: { purchase: knownDay(day("2024-03-14"), "receipt") },
      owner: { number: 1, acquiredOn: undefined, transferRegisteredOn: undefined },
      exchangedOn: undefined,
      ...unit,
    },
  };
}
