import { createHash } from "node:crypto";
import type { Transaction } from "../../database-types";
import { inTransaction } from "../../in-transaction";
import { answerOnce } from "../answer-once";
import type { Entered } from "./append-movements";

export type StockAnswer =
  | { readonly kind: "done"; readonly sentence: string }
  /** Nothing was changed; why, and what to do. */
  | { readonly kind: "refused"; readonly field?: string | undefined; readonly sentence: string };

/**
 * Makes one change of stock or orders in one transaction, once, however often its form is sent.
 * @param asked all that tells this request from another one, to notice a key that is used twice
 */
export async function onceInStock(
  route: string,
  entered: Entered,
  asked: unknown,
  change: (tx: Transaction) => Promise<StockAnswer>,
): Promise<StockAnswer> {
  const bodyHash = createHash("sha256")
    .update(JSON.stringify([entered.by, asked]))
    .digest("hex");
  const once = await answerOnce({ route: `parts/${route}`, key: entered.key, bodyHash }, async (store) => {
    const answer = await inTransaction(async (tx) => {
      const made = await change(tx);
      if (made.kind === "done") await store(tx, { status: 200, body: made });
      return made;
    });
    return { status: 200, body: answer };
  });
  switch (once.kind) {
    case "answered":
      return once.answer.body as StockAnswer; // only an answer of `change` is ever stored under this route
    case "running":
      return { kind: "refused", sentence: "The same form is being recorded right now. Look again in a moment." };
    case "other body":
      return {
        kind: "refused",
        sentence: "This form was recorded before with other values. Open the page again and enter it there.",
      };
  }
}
