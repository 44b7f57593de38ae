/** What a page says after a form of these pages was recorded, by the word in the address. */
export const doneWords = {
  entered: "Entered in the ledger",
  kept: "Kept; reorder point and quantity follow it",
  added: "On the order list as a draft",
  changed: "The line is changed",
  ordered: "Marked as ordered",
  received: "Received, and entered in the ledger",
  cancelled: "Cancelled; it can be taken up again",
  reopened: "On the list again",
} as const;
export type DoneWord = keyof typeof doneWords;

export function readDone(value: string | readonly string[] | undefined): string | undefined {
  return typeof value === "string" && Object.hasOwn(doneWords, value) ? doneWords[value as DoneWord] : undefined; // just looked up
}
