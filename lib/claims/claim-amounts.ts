import type { JobRecord, PartLine } from "@/lib/domain/job";
import type { PayItem } from "@/lib/domain/pay-item";
import type { Policy } from "@/lib/domain/policy";
import type { ClaimDeduction, ClaimLine } from "./claim";
import { type Amount, diagnosisAmount, labourAmount, tripAmount } from "./labour-amount";
import { centsInWords } from "./money-words";

export interface ClaimAmounts {
  readonly lines: readonly ClaimLine[];
  readonly deductions: readonly ClaimDeduction[];
  readonly totalCents: number;
  /** What has to be entered before an amount can be named. */
  readonly unknown: readonly string[];
}

/** Amounts of the covered pay items in whole cents, line by line, then limits and the customer's share. */
export function claimAmounts(record: JobRecord, items: readonly PayItem[], policy: Policy): ClaimAmounts {
  const isRepair = record.job.cause === "component";
  const parts = isRepair && items.includes("parts") ? partLines(record, policy) : [];
  const partsCents = sum(parts);
  const partsCap = overCap("parts_cap", "Parts", partsCents, policy.pay.parts.capCents, policy);
  const paidParts = partsCents - (partsCap?.cents ?? 0);
  const visit: readonly (readonly [ClaimLine["item"], string, Amount])[] = isRepair
    ? [
        ["labour", "Labour", items.includes("labour") ? labourAmount(record, policy) : none],
        ["trip", "Trip", items.includes("trip") ? tripAmount(record, policy) : none],
      ]
    : [["diagnosis", "Diagnosis", items.includes("diagnosis") ? diagnosisAmount(policy) : none]];
  const lines = [
    ...parts,
    ...handlingLine(paidParts, policy),
    ...visit.flatMap(([item, description, of]) => (of.kind === "amount" ? [plainLine(item, description, of)] : [])),
  ];
  const unknown = visit.flatMap(([, , of]) => (of.kind === "unknown" ? [of.fix] : []));
  return { lines, ...deducted(sum(lines), partsCap, policy), unknown };
}

const none: Amount = { kind: "nothing" };

/** Fitted parts at the cost on the distributor's invoice. Deposits on old parts and freight are not the part. */
function partLines({ partLines: given }: JobRecord, policy: Policy): readonly ClaimLine[] {
  return given.filter((line) => line.role === "fitted").map((line) => partLine(line, policy));
}

function partLine(line: PartLine, { currency }: Policy): ClaimLine {
  const { partNumber, description, quantity, unitCost, invoiceNumber, invoiceLine } = line;
  return {
    item: "parts",
    description: description === "" ? partNumber : description,
    quantity,
    cents: quantity * unitCost.cents,
    basis: `${quantity} x ${centsInWords(unitCost.cents, currency)}, invoice cost`,
    partNumber,
    invoiceNumber,
    invoiceLine,
  };
}

/** Half a cent is rounded up, once, on the sum of the parts. */
function handlingLine(partsCents: number, policy: Policy): readonly ClaimLine[] {
  const percent = policy.pay.parts.handlingPercent;
  const cents = Math.round((partsCents * Math.round(percent * 100)) / 10_000);
  if (cents === 0) return [];
  const basis = `${percent} % of ${centsInWords(partsCents, policy.currency)}`;
  return [plainLine("handling", "Part handling", { kind: "amount", cents, basis })];
}

function plainLine(item: ClaimLine["item"], description: string, of: Extract<Amount, { kind: "amount" }>): ClaimLine {
  const { cents, basis } = of;
  const noPart = { partNumber: undefined, invoiceNumber: undefined, invoiceLine: undefined };
  return { item, description, quantity: 1, cents, basis, ...noPart };
}

function deducted(grossCents: number, partsCap: ClaimDeduction | undefined, policy: Policy) {
  const { pay, contract } = policy;
  const deductions: ClaimDeduction[] = partsCap === undefined ? [] : [partsCap];
  const rest = () => grossCents - sum(deductions);
  const take = (deduction: ClaimDeduction | undefined) => deduction !== undefined && deductions.push(deduction);
  take(overCap("claim_cap", "Claim", rest(), pay.claimCapCents, policy));
  const share = Math.min(rest(), contract?.deductibleCents ?? 0);
  if (share > 0) {
    take({ kind: "deductible", cents: share, basis: `customer's share: ${centsInWords(share, policy.currency)}` });
  }
  take(overCap("per_claim_limit", "Contract", rest(), contract?.perClaimLimitCents, policy));
  return { deductions, totalCents: rest() };
}

function overCap(
  kind: ClaimDeduction["kind"],
  name: string,
  cents: number,
  cap: number | undefined,
  { currency }: Policy,
): ClaimDeduction | undefined {
  if (cap === undefined || cents <= cap) return undefined;
  return { kind, cents: cents - cap, basis: `${name} limited to ${centsInWords(cap, currency)}` };
}

function sum(lines: readonly { readonly cents: number }[]): number {
  return lines.reduce((total, { cents }) => total + cents, 0);
}
