import type { PartRole } from "@/lib/domain/job";

/** What a line of an invoice is when it says so itself: a core charge or freight entered as a part. Common practice, no source. */
export function lineRole(partNumber: string, description: string): PartRole | undefined {
  const text = `${partNumber} ${description}`;
  if (
    /\bcore[ -]?(?:charge|deposit|exchange|return|credit)?\b/i.test(text) &&
    !/\bcore (?:assembly|assy|bit)\b/i.test(text)
  )
    return "core_charge";
  if (
    /\b(?:freight|shipping|postage|s ?& ?h|delivery charge|handling|fracht|versand(?:kosten)?|frais de port|verzendkosten)\b/i.test(
      text,
    )
  )
    return "freight";
  return undefined;
}
