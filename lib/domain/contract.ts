import type { Day } from "@/lib/calendar/day";

/** A service contract on one unit. Its terms are the policy that `policy` names by key, or by name as the paper prints it. */
export interface Contract {
  readonly number: string;
  readonly policy: string;
  readonly soldOn: Day;
  readonly cancelledOn: Day | undefined;
  /** First and last day as its paper states them; absent where only the sale is known and the policy's term is counted. */
  readonly stated?: { readonly startsOn: Day; readonly endsOn: Day } | undefined;
  /** What the paper says otherwise than the policy. */
  readonly waitDays?: number | undefined;
  readonly deductibleCents?: number | undefined;
  /** The most that it pays over its whole term. */
  readonly limitCents?: number | undefined;
  /** What claims of other jobs on it have been paid, or ask while they are open. */
  readonly taken?: readonly { readonly jobNumber: string; readonly cents: number }[] | undefined;
}
