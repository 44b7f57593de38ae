import type { ClaimAct } from "@/lib/claims/life/claim-act";
import { refusalReasons } from "@/lib/claims/life/refusal-reason";
import type { Currency } from "@/lib/domain/money";
import { formatDay } from "@/lib/format/format-day";
import { formatMoney } from "@/lib/format/format-money";

export interface ActWords {
  readonly title: string;
  /** What it says besides: amounts, references, the payer's own words. */
  readonly lines: readonly string[];
}

/** One act of a claim's history in words. */
export function describeAct(act: ClaimAct, currency: Currency): ActWords {
  const sum = (lines: readonly { readonly cents: number }[]) =>
    formatMoney({ cents: lines.reduce((all, { cents }) => all + cents, 0), currency });
  switch (act.what) {
    case "built":
      return { title: "Built as a draft", lines: [] };
    case "withdrawn":
      return { title: "Withdrawn", lines: [act.reason] };
    case "sent":
      return { title: `Sent on ${formatDay(act.on)}, asking ${sum(act.lines)}`, lines: [] };
    case "received":
      return {
        title: `Received by the payer on ${formatDay(act.on)}`,
        lines: act.payerReference === undefined ? [] : [`Its number: ${act.payerReference}`],
      };
    case "answered":
      return answered(act, sum);
    case "paid":
      return { title: `Paid ${sum(act.lines)} on ${formatDay(act.on)}`, lines: [`Reference ${act.reference}`] };
    case "appealed":
      return { title: `Appealed on ${formatDay(act.on)}`, lines: [act.ground] };
    case "written off":
      return { title: `Written off on ${formatDay(act.on)}`, lines: [act.reason] };
    case "audit opened":
      return { title: `Audit opened on ${formatDay(act.on)}`, lines: [`Reference ${act.reference}`] };
    case "audit upheld":
      return { title: `Audit ended on ${formatDay(act.on)}: the payment stands`, lines: [] };
    case "clawed back":
      return {
        title: `${sum(act.lines)} taken back on ${formatDay(act.on)}`,
        lines: [`Reference ${act.reference}`, refusalReasons[act.reason], ...quoted(act.payerText)],
      };
    case "undone":
      return { title: `Event ${act.event} taken back`, lines: [act.reason] };
  }
}

function answered(
  { on, answer }: Extract<ClaimAct, { what: "answered" }>,
  sum: (lines: readonly { readonly cents: number }[]) => string,
): ActWords {
  const words = quoted(answer.payerText);
  if (answer.kind === "approved") {
    const reason = answer.reason === undefined ? [] : [refusalReasons[answer.reason]];
    return { title: `${sum(answer.lines)} approved on ${formatDay(on)}`, lines: [...reason, ...words] };
  }
  const title = answer.kind === "rejected" ? "Rejected" : "Sent back to be corrected";
  return { title: `${title} on ${formatDay(on)}`, lines: [refusalReasons[answer.reason], ...words] };
}

function quoted(payerText: string): string[] {
  return payerText === "" ? [] : [`In the payer’s words: “${payerText}”`];
}
