import { type Day, readDay } from "@/lib/calendar/day";
import { dayInWords } from "@/lib/calendar/day-words";
import type { PartHold } from "./part-hold";

/** What became of a failed part once it left the shelf. */
export const partFates = {
  "sent back": "Sent back to the payer",
  scrapped: "Scrapped",
} as const;
export type PartFate = keyof typeof partFates;
export const partFateKeys = Object.keys(partFates) as readonly PartFate[]; // Object.keys loses the key type

export interface FateEntry {
  readonly fate: PartFate;
  readonly on: Day;
  /** Number of its tag or of the parcel; empty where none was written down. */
  readonly tag: string;
  readonly by: string;
  /** Why it was let go before its time, or whatever else somebody should know. */
  readonly reason: string;
}

export interface FateQuestion {
  readonly hold: PartHold;
  /** Day on which the claim was first sent: before it no part is the payer's to ask for. */
  readonly sentOn: Day;
  readonly entry: FateEntry;
  readonly today: Day;
}

/**
 * Why a part can't be entered as gone; undefined where it can. Sending it back is what payers ask for, at any time; who
 * scraps a part that must still be kept says why, since it can cost the whole claim.
 */
export function fateProblem({ hold, sentOn, entry, today }: FateQuestion): string | undefined {
  const { fate, on, by, reason } = entry;
  if (by.trim() === "") return "Say who enters this.";
  if (readDay(on) === undefined) return `“${on}” is not a day; write it as 2026-03-31.`;
  if (on > today) return `${dayInWords(on)} is still to come: enter the day on which it left.`;
  if (on < sentOn) return `${dayInWords(on)} lies before the claim was sent, on ${dayInWords(sentOn)}.`;
  if (fate === "sent back" || reason.trim() !== "") return undefined;
  const until = mustStay(hold, on);
  return until === undefined
    ? undefined
    : `It has to be kept ${until}. Say why it was scrapped all the same: it can cost the claim.`;
}

function mustStay(hold: PartHold, on: Day): string | undefined {
  switch (hold.kind) {
    case "keep until":
      return on > hold.until ? undefined : `until ${dayInWords(hold.until)}`;
    case "keep until paid":
      return "until the claim is paid, and then by the payer’s clock";
    case "keep for audit":
      return "while the audit is open";
    case "may go":
      return hold.from !== undefined && on < hold.from ? `through the day before ${dayInWords(hold.from)}` : undefined;
  }
}
