import type { ActName } from "@/lib/claims/life/claim-act";

/** Acts that a person can record, by the word in the address. */
export const actSlugs = {
  sent: "sent",
  withdrawn: "withdrawn",
  received: "received",
  answered: "answered",
  paid: "paid",
  appealed: "appealed",
  "written-off": "written off",
  "audit-opened": "audit opened",
  "audit-upheld": "audit upheld",
  "clawed-back": "clawed back",
} as const satisfies Record<string, ActName>;
export type ActSlug = keyof typeof actSlugs;
export const actSlugKeys = Object.keys(actSlugs) as readonly ActSlug[]; // Object.keys loses the key type

export function slugOf(act: ActName): ActSlug | undefined {
  return actSlugKeys.find((slug) => actSlugs[slug] === act);
}

/** What the act is called where it is offered, and on its button; the second filing has a name of its own. */
export const actTitles: Readonly<Record<ActSlug, string>> = {
  sent: "Mark as sent",
  withdrawn: "Withdraw the draft",
  received: "Received by the payer",
  answered: "Record the answer",
  paid: "Record a payment",
  appealed: "Appeal",
  "written-off": "Write off",
  "audit-opened": "Audit opened",
  "audit-upheld": "Audit: payment upheld",
  "clawed-back": "Clawed back",
};

/** What the form explains before anything is entered. */
export const actHints: Readonly<Record<ActSlug, string>> = {
  sent: "Hand it in at the payer first. What went is locked here with its fingerprint; the job can go on changing.",
  withdrawn: "The draft is kept with its history, and the job can be claimed anew.",
  received: "The payer says that it has it. Nothing is decided yet.",
  answered: "Line by line as the payer answered, in its own words. Money is recorded apart, when it comes.",
  paid: "What came for each line. Less than was asked leaves the rest open.",
  appealed: "Ask the payer to look again at what it refused or cut.",
  "written-off": "Nothing more is asked. Should it be paid after all, the payment can still be recorded.",
  "audit-opened": "The payer looks at a claim that it has paid. Keep the part and the packet as it was filed.",
  "audit-upheld": "The payer has looked, and the money stays.",
  "clawed-back": "The payer takes back what it had paid, for each line.",
};
