import type { Claim, ClaimDeduction, ClaimLine } from "../claim";
import { centsInWords } from "../money-words";
import { shareOut } from "../remittance/split-payment";

/** A line as it is asked, with limits and the customer's share already taken off it. */
export interface AskedClaimLine extends ClaimLine {
  /** From 1, in the order of the claim. */
  readonly line: number;
}

type Asked = Pick<Claim, "lines" | "deductions" | "totalCents">;

/**
 * What is asked line by line, so that the lines add up to the claim and an answer can be held against each. A limit on
 * parts comes off the parts; what is taken off the whole claim comes off every line in proportion, by largest remainder.
 */
export function askedLines(claim: Asked & Pick<Claim, "currency">): readonly AskedClaimLine[] {
  const asked = askedCents(claim);
  return claim.lines.map((line, index) => {
    const cents = asked[index] ?? 0;
    const off = line.cents - cents;
    const basis = off === 0 ? line.basis : `${line.basis}, less ${centsInWords(off, claim.currency)} taken off`;
    return { ...line, line: index + 1, cents, basis };
  });
}

/** Of each line, in their order. */
export function askedCents({ lines, deductions, totalCents }: Asked): readonly number[] {
  const asked = deductions.reduce(
    takeOff(lines),
    lines.map(({ cents }) => cents),
  );
  const sum = asked.reduce((all, cents) => all + cents, 0);
  if (sum !== totalCents) throw new RangeError(`totalCents: ${totalCents} is not the sum of the lines: ${sum}`);
  return asked;
}

function takeOff(lines: readonly ClaimLine[]) {
  return (cents: readonly number[], { kind, cents: sum }: ClaimDeduction): number[] => {
    const weights = cents.map((each, index) => (kind !== "parts_cap" || lines[index]?.item === "parts" ? each : 0));
    if (sum === 0) return [...cents];
    const off = shareOut(sum, weights);
    return cents.map((each, index) => each - (off[index] ?? 0));
  };
}
