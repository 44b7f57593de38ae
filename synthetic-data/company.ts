// The invented company and the words that it would use. No name here belongs to a real company, maker or person.

export const company = {
  name: "Millrace Appliance Service (invented)",
  currency: "USD",
  timeZone: "America/New_York",
  territory: "US-OH",
  madeGraceMonths: 3,
} as const;

/** First names only: nobody is meant. */
export const technicians = ["Ines", "Marlow", "Petra", "Quill"] as const;

export const distributors = ["Fenwater Parts", "Tallow Street Supply", "Cobblegate Components"] as const;

/** Years of records at the demo's end. */
export const yearsOfRecords = 6;

/** At size 1. */
export const unitsAtSizeOne = 12_000;
