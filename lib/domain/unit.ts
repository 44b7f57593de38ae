import type { Day } from "@/lib/calendar/day";
import type { ProductType } from "./product-type";

export const unitUses = ["household", "commercial"] as const;
export type UnitUse = (typeof unitUses)[number];

/** Which date put the unit in service; `made` means manufacture plus the shop's stated grace. */
export const inServiceBases = ["installed", "delivered", "sold", "made"] as const;
export type InServiceBasis = (typeof inServiceBases)[number];

/** One appliance with a serial number. */
export interface Unit {
  readonly maker: string;
  readonly model: string;
  readonly productType: ProductType;
  /** As given; undefined on a placeholder unit, made for a job that came without a serial. */
  readonly serial: string | undefined;
  /** First and last day that manufacture can have happened: equal where the day is known, a month where only that is. */
  readonly madeFrom: Day | undefined;
  readonly madeUntil: Day | undefined;
  readonly shippedOn: Day | undefined;
  readonly soldOn: Day | undefined;
  readonly deliveredOn: Day | undefined;
  readonly installedOn: Day | undefined;
  readonly occupiedOn: Day | undefined;
  readonly registeredOn: Day | undefined;
  /** Day it left service; exposure ends here. */
  readonly retiredOn: Day | undefined;
  /** Day from which this unit's failures are on record, where later than the shop's own. */
  readonly recordedFrom: Day | undefined;
  readonly use: UnitUse;
  /** Country or country and state, ISO 3166 (US, US-CA). */
  readonly territory: string | undefined;
  readonly ownerNumber: number;
}
