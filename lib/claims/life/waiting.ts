import type { ClaimState } from "./claim-standing";

/** Days after which an answer is late. 2 to 6 weeks are usual and over 45 days is late: common practice, no source. */
export const answerDays = 45;

/** States in which the payer has the next move. */
export const waitingStates = ["sent", "received", "appealed"] as const satisfies readonly ClaimState[];

/** A claim's state as the lists tell it: an approval of less than was asked is ours to answer, one in full is not. */
export type ListedState = ClaimState | "approved in part";

/** The lists in which the claims are shown, by whose move is next. */
export const claimGroups = {
  drafts: ["draft"],
  sent: ["sent", "received", "approved", "appealed", "in audit"],
  answered: ["needs correction", "rejected", "approved in part"],
  "short-paid": ["short-paid"],
  settled: ["paid", "written off", "clawed back", "withdrawn"],
} as const satisfies Record<string, readonly ListedState[]>;
export type ClaimGroup = keyof typeof claimGroups;
export const claimGroupKeys = Object.keys(claimGroups) as readonly ClaimGroup[]; // Object.keys loses the key type
