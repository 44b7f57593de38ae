import { dayInWords } from "@/lib/calendar/day-words";
import type { Unit } from "@/lib/domain/unit";
import { checkOf, type FilingCase, type FilingCheck, type Look, onPapers, onUnit } from "./filing-case";

/**
 * Missing, impossible, or not the day on the payer's record. Source: missing or invalid purchase date is on a published
 * maker's list of 1996; that a day which differs from the registered one rejects the claim, a public trade forum.
 */
export function purchaseDateChecked({ given: { record }, claim }: FilingCase): FilingCheck {
  const { unit, job, attachments } = record;
  if (claim.source.campaign !== undefined)
    return checkOf("purchase_date", onUnit, [{ fine: "The campaign pays by serial; it asks for no purchase date." }]);
  if (claim.source.payerKind === "own_guarantee")
    return checkOf("purchase_date", onUnit, [{ fine: "The own guarantee runs from the earlier repair." }]);
  const receipt: Look = attachments.some(({ subject }) => subject === "receipt")
    ? { fine: "Proof of purchase is attached." }
    : { wrong: "Attach proof of purchase: a receipt, delivery note or closing paper." };
  const reported = job.requestedOn ?? job.completedOn;
  const before: Look =
    unit.soldOn !== undefined && unit.soldOn > reported
      ? { wrong: `The purchase, ${dayInWords(unit.soldOn)}, lies after the call on ${dayInWords(reported)}.` }
      : {};
  const days = [bought(unit), before, registered(unit)];
  const place = days.every(({ wrong }) => wrong === undefined) ? onPapers : onUnit;
  return checkOf("purchase_date", place, [receipt, ...days]);
}

function bought({ soldOn, madeFrom }: Unit): Look {
  if (soldOn === undefined) return { wrong: "Enter the purchase date from the receipt." };
  if (madeFrom !== undefined && soldOn < madeFrom)
    return { wrong: `The purchase, ${dayInWords(soldOn)}, lies before the manufacture, ${dayInWords(madeFrom)}.` };
  const made = madeFrom === undefined ? "" : `, after the manufacture on or after ${dayInWords(madeFrom)}`;
  return { fine: `Bought on ${dayInWords(soldOn)}${made}.` };
}

/** The payer's record is its own: from here only an order that can't be right is seen. */
function registered({ registeredOn, soldOn }: Unit): Look {
  if (registeredOn === undefined) return { fine: "No registration is on file to compare with." };
  if (soldOn !== undefined && registeredOn < soldOn)
    return {
      wrong: `Registered on ${dayInWords(registeredOn)}, before the purchase: ask the payer which purchase date it holds.`,
    };
  return { fine: `Registered on ${dayInWords(registeredOn)}.` };
}
