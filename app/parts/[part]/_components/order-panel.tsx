import Link from "next/link";
import { TwentyFutures } from "@/app/_charts/twenty-futures";
import { ButtonLink } from "@/app/_ui/button-link";
import { Plate } from "@/app/_ui/plate";
import type { PartPage } from "@/db/queries/part-page";
import { formatCounted } from "@/lib/format/format-count";
import { formatPlainDay } from "@/lib/format/format-day";
import { AdviceMark } from "../../_components/advice-mark";
import { adviceWords } from "../../line-words";
import type { PartRow } from "../../parts-view";
import { quantityWords, reorderWords } from "../part-words";

interface Props {
  readonly part: PartPage;
  readonly line: PartRow["line"];
}

/** What to order, over the twenty futures and the arithmetic that it follows from. */
export function OrderPanel({ part, line }: Props) {
  const { plan, partKey, orders } = part;
  const available = "available" in line ? line.available : 0;
  return (
    <Plate title="What to order">
      <p>
        <AdviceMark line={line} /> {adviceWords({ ...part, line })}
      </p>
      {plan.reorder.kind === "reorder-point" && (
        <figure className="stack-tight">
          <figcaption>
            Needed until an order placed at the next look has come, in twenty futures of equal chance
          </figcaption>
          <TwentyFutures twenty={plan.reorder.twenty} stock={Math.max(0, available)} />
        </figure>
      )}
      <details open>
        <summary>Where the reorder point comes from</summary>
        <div className="stack-tight">
          {reorderWords(plan).map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
          <p>{quantityWords(plan)}</p>
        </div>
      </details>
      {orders.map(({ orderId, state, quantity, received, orderedOn, expectedOn }) => (
        <p key={orderId}>
          <Link href={`/parts/orders/${orderId}`}>{formatCounted(quantity, "piece")}</Link>{" "}
          {state === "draft"
            ? "on the order list as a draft"
            : `ordered${orderedOn === undefined ? "" : ` on ${formatPlainDay(orderedOn)}`}`}
          {received > 0 && `, ${received} of them came`}
          {expectedOn !== undefined && `, due ${formatPlainDay(expectedOn)}`}
        </p>
      ))}
      <div className="cluster no-print">
        <ButtonLink href={`/parts/orders/new?part=${encodeURIComponent(partKey)}`} weight="main">
          Add to the order list
        </ButtonLink>
        <ButtonLink href={`/parts/${encodeURIComponent(partKey)}/terms`}>How it is bought, and the risk</ButtonLink>
      </div>
    </Plate>
  );
}
