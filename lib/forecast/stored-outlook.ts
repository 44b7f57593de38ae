import type { CountBand } from "@/lib/statistics/demand/count-band";
import type { DemandMethodKey } from "./demand-method";
import type { StoredFleet } from "./fleet/stored-fleet";

/** A part's forecast as pages show it: plain values, worked out ahead and kept. */
export type StoredOutlook =
  | {
      readonly kind: "forecast";
      /** Oldest first, from the first month of the forecast on. */
      readonly months: readonly StoredMonth[];
      readonly method: DemandMethodKey;
      /** Why this method, in a sentence. */
      readonly reason: string;
      readonly test: StoredTest;
      readonly basis: "tested" | "few-months" | "never-used";
      /** The machines that carry it; missing in outlooks from before they were looked at. */
      readonly fleet?: StoredFleet;
      /** What is odd about the part's records, each a sentence with what to do. */
      readonly notes: readonly string[];
    }
  | { readonly kind: "no-months"; readonly notes: readonly string[] };

export interface StoredMonth {
  readonly mean: number;
  readonly band30: CountBand;
  readonly band60: CountBand;
  readonly band90: CountBand;
}

export type StoredTest =
  | {
      readonly kind: "tested";
      readonly origins: number;
      /** Months judged, over all starting points. */
      readonly months: number;
      readonly methods: readonly StoredMethodTest[];
    }
  | { readonly kind: "too-short"; readonly months: number; readonly needed: number };

export interface StoredMethodTest {
  readonly key: DemandMethodKey;
  readonly name: string;
  /** Mean scaled quantile loss: smaller is better. */
  readonly loss: number;
  readonly inside60: number;
  readonly inside90: number;
}

/** Possible futures that are kept of each part, and months that each of them looks ahead. */
export const keptFutures = { futures: 400, horizon: 24 } as const;
