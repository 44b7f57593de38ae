/** Where a line of a payer's list is. Every line has exactly one fate, so that the counts add up to the file. */
export const lineFates = {
  ready: "Ready to post",
  asked: "Waits for your yes",
  tray: "In the tray: no claim found",
  unreadable: "Not readable",
  posted: "Posted",
  "set aside": "Set aside",
  undone: "Posted and taken back",
} as const;
export type LineFate = keyof typeof lineFates;
export const lineFateKeys = Object.keys(lineFates) as readonly LineFate[]; // Object.keys loses the key type
