import type { PartLine } from "@/lib/domain/job";
import { normalised } from "@/lib/domain/normalised";
import { centsInWords } from "../money-words";
import { checkOf, type FilingCase, type FilingCheck, type KnownPart, type Look, onJob } from "./filing-case";

/**
 * Number, distributor, invoice and cost of each part: any mismatch rejects the claim. Source: a servicer on a public
 * trade forum calls it one of the most common rejections; missing part invoice is on a published maker's list of 1996.
 */
export function partInvoiceChecked({ given: { record, policy }, claim, parts }: FilingCase): FilingCheck {
  if (!claim.lines.some(({ item }) => item === "parts"))
    return checkOf("part_invoice", onJob, [{ fine: "No part is asked for." }]);
  const fitted = record.partLines.filter(({ role }) => role === "fitted");
  const hasInvoice = record.attachments.some(({ subject }) => subject === "part_invoice");
  const paper: Look = hasInvoice
    ? { fine: "The distributor’s invoice is on file." }
    : { open: "Attach the distributor’s invoice: numbers and cost can’t be held against paper that is not on file." };
  return checkOf("part_invoice", onJob, [
    ...fitted.flatMap((line) => [
      onInvoice(line, policy.currency),
      inCatalogue(
        line,
        parts.find(({ partNumber }) => partNumber === line.partNumber),
      ),
    ]),
    paper,
  ]);
}

function onInvoice(line: PartLine, currency: Parameters<typeof centsInWords>[1]): Look {
  const name = `Part line ${line.line}`;
  const lacking = [
    ...(line.partNumber.trim() === "" ? ["the part number"] : []),
    ...(line.distributor === undefined ? ["the distributor"] : []),
    ...(line.invoiceNumber === undefined ? ["the invoice number"] : []),
    ...(line.unitCost.cents === 0 ? ["the cost"] : []),
  ];
  if (lacking.length > 0) return { wrong: `${name}: enter ${lacking.join(" and ")} as on the invoice.` };
  const at = [line.invoiceNumber, line.invoiceLine].filter((part) => part !== undefined).join(", line ");
  const cost = centsInWords(line.unitCost.cents, currency);
  return { fine: `${line.partNumber}, ${line.quantity} at ${cost}, ${line.distributor}, invoice ${at}.` };
}

/** Parts stocked over six months may be superseded or no longer valid: the payer then knows only the newer number. */
function inCatalogue(line: PartLine, known: KnownPart | undefined): Look {
  const name = `Part line ${line.line}`;
  if (known === undefined || !known.isInCatalogue)
    return { open: `${name}: ${line.partNumber} is not in the catalogue of parts, so its number can’t be confirmed.` };
  if (known.supersededBy !== undefined && normalised(known.supersededBy) !== normalised(line.partNumber))
    return {
      open: `${name}: ${line.partNumber} is superseded by ${known.supersededBy}. Say so on the claim if the invoice has the older number.`,
    };
  return {};
}
