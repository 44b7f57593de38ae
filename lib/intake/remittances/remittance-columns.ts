/** What a column of a payer's list may hold. */
export const remittanceFields = {
  claim: "Our claim number",
  payerReference: "The payer's own number",
  job: "Our job number",
  serial: "Serial",
  completedOn: "Day completed",
  item: "What it pays for",
  paid: "Amount paid",
  currency: "Currency",
  text: "The payer's words",
} as const;
export type RemittanceField = keyof typeof remittanceFields;
export const remittanceFieldKeys = Object.keys(remittanceFields) as readonly RemittanceField[]; // Object.keys loses the key type

/** How the rows of a list are read, as guessed and then confirmed. */
export interface RemittanceColumns {
  /** One for each column of the file, in its order; null where it is not used. */
  readonly fields: readonly (RemittanceField | null)[];
  /** Why each column was taken for what it is. */
  readonly reasons: readonly string[];
  readonly decimalMark: "." | ",";
  readonly dateOrder: "year first" | "month first" | "day first";
}
