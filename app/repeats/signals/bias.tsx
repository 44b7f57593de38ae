import { HowCounted } from "@/app/_ui/how-counted";
import type { BiasMeasures } from "@/db/queries/signal-bias";
import { formatCount, formatCounted } from "@/lib/format/format-count";
import { formatDecimal } from "@/lib/format/format-decimal";
import { keptBias } from "./kept-bias";

/** What service data cannot show, measured where that is possible. */
export async function Bias() {
  const measures = await keptBias();
  return (
    <details>
      <summary>What these figures cannot show</summary>
      <ul>
        {biasSentences(measures).map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      <p>
        <HowCounted of="bias" />
      </p>
    </details>
  );
}

export function biasSentences(measures: BiasMeasures): string[] {
  const { registered, dated, withoutSerial, closed, known, inWarranty, afterWarranty } = measures;
  const share = (part: number, whole: number) =>
    whole === 0 ? "none" : `${formatDecimal((100 * part) / whole, 0)} in 100`;
  const sentences = [
    `Of ${formatCounted(registered, "unit")} in the register ${formatCount(dated)} (${share(dated, registered)}) have a day of installation, delivery or sale, or one of production with the grace; the others are in no rate.`,
    `${formatCounted(known, "unit")} are known only because they had a job; they add nothing to what failures are divided by.`,
    `${formatCount(withoutSerial)} of ${formatCounted(closed, "closed job")} (${share(withoutSerial, closed)}) hang on no unit that can be placed in age: no serial, or no day of service.`,
  ];
  if (inWarranty.unitYears > 0 && afterWarranty.unitYears > 0) {
    const per100 = ({ jobs, unitYears }: BiasMeasures["inWarranty"]) => formatDecimal((100 * jobs) / unitYears, 0);
    sentences.push(
      `Jobs in 100 unit-years: ${per100(inWarranty)} in the first year of service, ${per100(afterWarranty)} after it. While a call is free to the owner more is called in, and later owners scrap a machine or go elsewhere; neither is a change in the machine.`,
    );
  }
  sentences.push("A part that was replaced has not always failed, and units that nobody called about look sound.");
  return sentences;
}
