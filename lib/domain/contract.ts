import type { Day } from "@/lib/calendar/day";

/** A service contract on one unit. Its terms are the policy of that key. */
export interface Contract {
  readonly number: string;
  readonly policy: string;
  readonly soldOn: Day;
  readonly cancelledOn: Day | undefined;
}
