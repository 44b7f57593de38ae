import { dayInWords } from "@/lib/calendar/day-words";
import { repeatCheck } from "../repeat-check";
import {
  type CheckPlace,
  checkOf,
  type FilingCase,
  type FilingCheck,
  type InvoiceLine,
  type Look,
  type OtherClaim,
  onJob,
} from "./filing-case";

/**
 * Repeat within the payer's window, or claimed before. Source: "second repair within 30 days" is on a published maker's
 * list of 1996. A duplicate is the same payer, unit and completion day, the same invoice line, or the same job; parts
 * alone beside labour alone on one job are a legal pair (common practice, no source).
 */
export function repeatChecked(filing: FilingCase): FilingCheck {
  const found = filing.others.flatMap((other) => {
    const why = duplicateOf(filing, other);
    return why === undefined ? [] : [{ other, why }];
  });
  const place: CheckPlace = found[0] ? { kind: "claim", claimNumber: found[0].other.claimNumber } : onJob;
  return checkOf("repeat", place, [
    repeated(filing),
    ...(found.length === 0 ? [{ fine: "Nothing of this is in another claim." }] : []),
    ...found.map(({ why }) => ({ wrong: why })),
  ]);
}

function repeated({ given }: FilingCase): Look {
  const found = repeatCheck(given.record, given.policy);
  if (found === undefined) return { fine: "No earlier repair stands in the way." };
  const until = dayInWords(found.decision.windowLastDay);
  switch (found.decision.kind) {
    case "outside_window":
      return { fine: `Job ${found.earlierJob} lies outside the repeat window.` };
    case "unrelated":
      return {
        open: `Job ${found.earlierJob} lies inside the repeat window (until ${until}), for other trouble: say in the cause line why the two are unrelated.`,
      };
    case "cannot_compare":
      return { open: `Job ${found.earlierJob} lies inside the repeat window: name component and symptom on both.` };
    case "repeat_within_window":
      return { wrong: `Job ${found.earlierJob} was the same repair, and its window runs until ${until}.` };
  }
}

function duplicateOf(filing: FilingCase, other: OtherClaim): string | undefined {
  const { claim, given } = filing;
  const { job } = given.record;
  const twice = ourInvoiceLines(filing).find((line) => other.invoiceLines.some((theirs) => isSameLine(line, theirs)));
  if (twice !== undefined)
    return `Invoice ${twice.invoiceNumber}${twice.invoiceLine === undefined ? "" : `, line ${twice.invoiceLine}`} is already in claim ${other.claimNumber}. One invoice line pays once.`;
  const items = claim.lines.map(({ item }) => item);
  const sharesItem = other.items.some((item) => items.includes(item));
  if (other.jobNumber === job.jobNumber && sharesItem)
    return `Claim ${other.claimNumber} asks for the same on this job.`;
  const isSameDay = other.isSameUnit && other.completedOn === job.completedOn && other.payer === claim.source.payerName;
  if (isSameDay && other.jobNumber !== job.jobNumber && sharesItem)
    return `Claim ${other.claimNumber} asks the same payer for this unit and completion day.`;
  return undefined;
}

function ourInvoiceLines({ claim }: FilingCase): readonly InvoiceLine[] {
  return claim.lines.flatMap(({ invoiceNumber, invoiceLine, partNumber }) =>
    invoiceNumber === undefined ? [] : [{ invoiceNumber, invoiceLine, partNumber }],
  );
}

/** Without a line number the part's own number has to tell the lines of an invoice apart. */
function isSameLine(one: InvoiceLine, other: InvoiceLine): boolean {
  if (one.invoiceNumber !== other.invoiceNumber) return false;
  if (one.invoiceLine !== undefined && other.invoiceLine !== undefined) return one.invoiceLine === other.invoiceLine;
  return one.partNumber === other.partNumber;
}
