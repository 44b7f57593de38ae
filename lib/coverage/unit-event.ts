import type { StartEvent } from "@/lib/domain/policy-start";
import type { UnitDateName } from "./coverage-facts";

/** Whether the event is a date of the unit itself, and not of a contract or an earlier repair. */
export function isUnitEvent(event: StartEvent): event is UnitDateName {
  return event !== "contract_sale" && event !== "previous_repair" && event !== "maker_cover_end";
}
