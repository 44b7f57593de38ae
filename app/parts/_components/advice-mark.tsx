import { StatusWord } from "@/app/_ui/status-word";
import type { PartLine } from "@/lib/stock/part-line";

/** Shape and word for what to do about a part. */
export function AdviceMark({ line }: { readonly line: PartLine }) {
  switch (line.kind) {
    case "negative-stock":
      return <StatusWord status="act-now">Count it</StatusWord>;
    case "order":
      return line.chanceShort > 0.5 ? (
        <StatusWord status="act-now">Order</StatusWord>
      ) : (
        <StatusWord status="watch">Order</StatusWord>
      );
    case "enough":
      return <StatusWord status="fine" />;
    case "not-counted":
    case "no-need-known":
      return <StatusWord status="note" />;
  }
}
