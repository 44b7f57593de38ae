import { z } from "zod";
import { todayIn } from "@/app/_clock/today";
import { readOnly } from "@/db/client";
import { loadShop } from "@/db/queries/shop";
import type { Entered } from "@/db/writes/parts/append-movements";
import type { Day } from "@/lib/calendar/day";
import type { FormTexts } from "./form-texts";

const uuid = z.uuid();

/** Who enters a form, when, and the key that it came with. */
export async function enteredBy(texts: FormTexts, by: string): Promise<Entered & { readonly today: Day }> {
  const key = uuid.safeParse(texts.optional("key"));
  if (!key.success) texts.wrong("key", "The form did not arrive whole. Open the page again and start from there.", "");
  const today = await readOnly(async (db) => todayIn((await loadShop(db)).timeZone));
  return {
    by,
    at: new Date().toISOString(),
    key: key.success ? key.data : "",
    today,
  };
}
