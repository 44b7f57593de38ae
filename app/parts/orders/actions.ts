"use server";
import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { mayDo } from "@/app/_people/may-do";
import { readOnly } from "@/db/client";
import { loadPartList } from "@/db/queries/part-list";
import { changeOrder } from "@/db/writes/parts/change-order";
import type { Day } from "@/lib/calendar/day";
import { normalised } from "@/lib/domain/normalised";
import type { OrderAct } from "@/lib/stock/order-act";
import type { DoneWord } from "../_components/done-words";
import { enteredBy } from "../_components/entered-by";
import { FormTexts } from "../_components/form-texts";
import type { OnceState } from "../_components/once-form";

/** Puts a part on the order list as a draft. */
export async function addOrder(_previous: OnceState, form: FormData): Promise<OnceState> {
  const person = await mayDo("parts.change");
  const texts = new FormTexts(form);
  const { today, ...entered } = await enteredBy(texts, person.name);
  const partNumber = texts.optional("part") ?? texts.wrong("part", "Part: enter its number.", "");
  const quantity = texts.needed("quantity", "Pieces", 1);
  const unitCostCents = texts.cents("unitCost", "Cost of one");
  if (texts.problems.length > 0) return { problems: texts.problems };
  const [known] = await readOnly((db) => loadPartList(db, [normalised(partNumber)]));
  const act: OrderAct = {
    what: "added",
    partNumber: known?.partNumber ?? partNumber,
    description: texts.optional("description") ?? known?.description ?? "",
    supplier: texts.optional("supplier") ?? "",
    quantity,
    unitCostCents,
    note: texts.optional("note") ?? "",
    why: texts.optional("why") ?? "",
  };
  const answer = await changeOrder({ orderId: undefined, seenVersion: 0, today, ...entered }, act);
  if (answer.kind === "refused") return { problems: [{ field: answer.field, text: answer.sentence }] };
  return done("added");
}

const acts = ["changed", "ordered", "received", "cancelled", "reopened"] as const;

/** Does one thing with a line of the order list. */
export async function actOnOrder(_previous: OnceState, form: FormData): Promise<OnceState> {
  const person = await mayDo("parts.change");
  const texts = new FormTexts(form);
  const { today, ...entered } = await enteredBy(texts, person.name);
  const what = texts.oneOf("act", acts, "The form did not arrive whole. Open the line again.");
  const act = readAct(what, texts, today);
  const orderId = texts.whole("order", "Line", 1, 0);
  const seenVersion = texts.whole("version", "Version", 1, 0);
  if (texts.problems.length > 0) return { problems: texts.problems };
  const answer = await changeOrder({ orderId, seenVersion, today, ...entered }, act);
  if (answer.kind === "refused") return { problems: [{ field: answer.field, text: answer.sentence }] };
  return done(what);
}

function readAct(what: (typeof acts)[number], texts: FormTexts, today: Day): OrderAct {
  switch (what) {
    case "changed":
      return {
        what,
        quantity: texts.needed("quantity", "Pieces", 1),
        supplier: texts.optional("supplier") ?? "",
        unitCostCents: texts.cents("unitCost", "Cost of one"),
        note: texts.optional("note") ?? "",
        expectedOn: texts.day("expectedOn", "Due"),
      };
    case "ordered":
      return { what, orderedOn: texts.pastDay("on", "Ordered on", today), expectedOn: texts.day("expectedOn", "Due") };
    case "received":
      return {
        what,
        receivedOn: texts.pastDay("on", "Came on", today),
        pieces: texts.needed("pieces", "Pieces", 1),
        place: texts.optional("place") ?? "",
      };
    case "cancelled":
    case "reopened":
      return { what, on: today };
  }
}

function done(word: DoneWord): never {
  revalidatePath("/parts");
  redirect(`/parts/orders?done=${word}`);
}
