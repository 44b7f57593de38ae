import type { CountedTerm } from "@/lib/calendar/term";

/** Days that cover can run from. */
export const startEvents = {
  purchase: "Purchase",
  delivery: "Delivery",
  installation: "Installation",
  occupancy: "Closing or first occupancy",
  first_use: "First use",
  registration: "Registration",
  shipped: "Shipped to distributor",
  manufacture: "Manufacture",
  contract_sale: "Sale of the contract",
  maker_cover_end: "Day after the maker's cover",
  previous_repair: "Completion of the previous repair",
} as const;
export type StartEvent = keyof typeof startEvents;
export const startEventKeys = Object.keys(startEvents) as readonly StartEvent[]; // Object.keys loses the key type

export interface StartPoint {
  readonly event: StartEvent;
  /** Grace added once, such as three months after manufacture for the time in stock. */
  readonly plus?: CountedTerm | undefined;
}

/** The first point whose day is known starts the term; a fallback never outranks a proven day before it. */
export interface StartRule {
  readonly from: StartPoint;
  readonly fallbacks: readonly StartPoint[];
}

/** Which day of the job is tested against the term. */
export const decisiveEvents = ["reported", "visit", "completed"] as const;
export type DecisiveEvent = (typeof decisiveEvents)[number];
