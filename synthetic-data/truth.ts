// What the demo was drawn from: the answers that an analysis of its files should find, and the rows that intake should hold.
import type { Day } from "@/lib/calendar/day";
import type { Cause } from "@/lib/domain/cause";
import type { ProductType } from "@/lib/domain/product-type";
import type { AddedTrouble } from "./added-troubles";
import type { DirtKind } from "./job-dirt";
import type { PlantedDefect } from "./planted-defects";

export interface Truth {
  readonly schema: "ohmsworth/demo-truth/1";
  readonly seed: number;
  readonly size: number;
  readonly until: Day;
  readonly recordsFrom: Day;
  readonly lives: readonly TrueLife[];
  readonly plantedDefects: readonly PlantedDefect[];
  /** Troubles on top of the lives, and the cell that only grows old. */
  readonly addedTroubles: readonly AddedTrouble[];
  readonly decoy: { readonly modelNumber: string; readonly component: string };
  /** A cell that looks bad by chance alone: the most surprising one where nothing was planted. */
  readonly chanceOnly: ChanceCell | undefined;
  readonly calls: readonly TrueCall[];
  readonly season: { readonly productType: ProductType; readonly swing: number; readonly peakDayOfYear: number };
  /** Share of closed failures that the files still tie to a unit of the register and to their component. */
  readonly observableShare: number;
  /** Chance that a job reported so many days ago is closed; index is days. */
  readonly closedWithin: readonly number[];
  readonly ourShareOfRepairs: OurShare;
  /** Jobs told in full, whose failures were not drawn from the lives. */
  readonly fixedJobs: readonly FixedJob[];
  readonly counts: Readonly<Record<string, number>>;
  /** Rows that intake must hold, each for one reason; every other row is acceptable. */
  readonly heldRows: readonly HeldRow[];
  /** Rows of jobs.csv by kind of dirt that intake takes in. */
  readonly acceptedDirt: Readonly<Record<DirtKind, readonly number[]>>;
  readonly leaks: PlantedLeaks;
}

/** Weibull life of a component's spells in one model; age in days of wear, each replacement begins at 0. */
export interface TrueLife {
  readonly model: string;
  readonly productType: ProductType;
  readonly component: string;
  readonly shape: number;
  readonly scaleDays: number;
}

export interface TrueCall {
  readonly productType: ProductType;
  readonly cause: Cause;
  readonly component: string | undefined;
  readonly symptom: string;
  readonly per100UnitYears: number;
  readonly timesInFirst90Days: number;
}

export interface ChanceCell {
  readonly model: string;
  readonly component: string;
  readonly madeFrom: Day;
  readonly madeTo: Day;
  readonly observed: number;
  readonly expected: number;
}

export interface OurShare {
  /** While a unit is in the register every repair of it reaches the company. */
  readonly whileInRegister: number;
  /** Owners who leave, per year after the first; the register has the day as retired_on. */
  readonly leavingPerYear: number;
}

export interface FixedJob {
  readonly jobNumber: string;
  readonly serial: string;
  readonly model: string;
  readonly component: string;
  readonly cause: Cause;
}

export interface HeldRow {
  readonly file: string;
  readonly row: number;
  readonly kind: HeldKind;
}

export type HeldKind =
  | "impossible_date"
  | "unknown_component"
  | "serial_of_another_model"
  | "negative_quantity"
  | "unknown_job"
  | "unknown_check";

export interface PlantedLeaks {
  /** Covered failures that the call desk billed to the customer. */
  readonly billedToCustomerThoughCovered: readonly string[];
  /** Covered failures filed under the maker or its campaign; no claim exists until somebody makes one. */
  readonly filedUnderMakerNotClaimed: number;
}
