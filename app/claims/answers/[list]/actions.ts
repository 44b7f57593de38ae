"use server";
import { revalidatePath } from "next/cache";
import { z } from "zod";
import { todayIn } from "@/app/_clock/today";
import { mayDo } from "@/app/_people/may-do";
import { readOnly } from "@/db/client";
import { loadRemittance } from "@/db/queries/money-remittances";
import { loadShop } from "@/db/queries/shop";
import { decideLine } from "@/db/writes/money/decide-line";
import { postRemittance } from "@/db/writes/money/post-remittance";
import { readRemittance } from "@/db/writes/money/read-remittance";
import { setWording } from "@/db/writes/money/set-wording";
import { undoRemittance } from "@/db/writes/money/undo-remittance";
import { refusalReasonKeys } from "@/lib/claims/life/refusal-reason";
import { remittanceFieldKeys } from "@/lib/intake/remittances/remittance-columns";

export interface ListState {
  readonly problems: readonly string[];
  readonly said?: string;
}

const broken: ListState = { problems: ["The form did not arrive whole. Open the list again."] };
const asked = z.object({ list: z.coerce.number().int().positive() });

const columnsForm = asked.extend({
  decimalMark: z.enum([".", ","]),
  dateOrder: z.enum(["year first", "month first", "day first"]),
});

/** Reads every line by the columns that somebody said yes to. */
export async function confirmColumns(_previous: ListState, form: FormData): Promise<ListState> {
  const person = await mayDo("claims.act");
  const read = columnsForm.safeParse(Object.fromEntries(form));
  if (!read.success) return broken;
  const { list, decimalMark, dateOrder } = read.data;
  const { known, today } = await readOnly(async (db) => ({
    known: await loadRemittance(db, list),
    today: todayIn((await loadShop(db)).timeZone),
  }));
  if (known === undefined) return broken;
  const fields = known.header.map((_, place) => {
    const value = form.get(`column ${place}`);
    return remittanceFieldKeys.find((field) => field === value) ?? null;
  });
  const twice = fields.find((field, place) => field !== null && fields.indexOf(field) !== place);
  if (twice !== undefined) return { problems: ["Two columns are said to hold the same thing. Leave one of them out."] };
  const columns = { fields, reasons: known.columns.reasons, decimalMark, dateOrder };
  const result = await readRemittance({ remittanceId: list, columns, by: person.name, today });
  if (result.kind === "refused") return { problems: [result.sentence] };
  revalidatePath(`/claims/answers/${list}`);
  return { problems: [], said: `${result.lines} lines were read.` };
}

const postForm = asked.extend({ version: z.coerce.number().int() });

export async function postList(_previous: ListState, form: FormData): Promise<ListState> {
  const person = await mayDo("claims.act");
  const read = postForm.safeParse(Object.fromEntries(form));
  if (!read.success) return broken;
  const { list, version } = read.data;
  const at = new Date().toISOString();
  const result = await postRemittance({ remittanceId: list, seenVersion: version, by: person.name, at });
  if (result.kind === "refused") return { problems: [result.sentence] };
  revalidatePath(`/claims/answers/${list}`);
  const tray = result.toTray === 0 ? "" : ` ${result.toTray} went to the tray; each says why.`;
  return { problems: [], said: `${result.lines} lines were posted to ${result.claims} claims.${tray}` };
}

const lineForm = asked.extend({
  row: z.coerce.number().int().min(0),
  say: z.enum(["yes", "no", "claim", "aside"]),
});

/** Fields that stand on the page once for each row have the row in their names. */
function textOf(form: FormData, name: string): string {
  const [, value] = [...form].find(([key]) => key.startsWith(`${name} `)) ?? [];
  return typeof value === "string" ? value.slice(0, 400) : "";
}

export async function decide(_previous: ListState, form: FormData): Promise<ListState> {
  const person = await mayDo("claims.act");
  const read = lineForm.safeParse(Object.fromEntries(form));
  if (!read.success) return broken;
  const { list, row, say } = read.data;
  const text = textOf(form, "text");
  const decision = say === "claim" ? { say, claimNumber: text } : say === "aside" ? { say, why: text } : { say };
  const result = await decideLine({ remittanceId: list, row, decision, by: person.name });
  if (result.kind === "refused") return { problems: [result.sentence] };
  revalidatePath(`/claims/answers/${list}`);
  return { problems: [] };
}

const wordForm = asked.extend({
  words: z.string().trim().min(1).max(2000),
  reason: z.enum(refusalReasonKeys as ["other"]), // never empty
});

export async function nameReason(_previous: ListState, form: FormData): Promise<ListState> {
  const person = await mayDo("claims.act");
  const read = wordForm.safeParse({ ...Object.fromEntries(form), reason: textOf(form, "reason") });
  if (!read.success) return { problems: ["Choose a reason."] };
  const { list, words, reason } = read.data;
  const at = new Date().toISOString();
  const known = await readOnly((db) => loadRemittance(db, list));
  if (known === undefined) return broken;
  await setWording({ payer: known.payer, payerText: words, reason, by: person.name, at });
  revalidatePath(`/claims/answers/${list}`);
  return { problems: [], said: "Remembered for this payer." };
}

const undoForm = asked.extend({ reason: z.string().trim().min(1).max(400) });

export async function takeBackList(_previous: ListState, form: FormData): Promise<ListState> {
  const person = await mayDo("claims.act");
  const read = undoForm.safeParse(Object.fromEntries(form));
  if (!read.success) return { problems: ["Say why the list is taken back."] };
  const { list, reason } = read.data;
  const result = await undoRemittance({ remittanceId: list, by: person.name, reason, at: new Date().toISOString() });
  if (result.kind === "refused") return { problems: result.sentences };
  revalidatePath(`/claims/answers/${list}`);
  return { problems: [], said: `${result.claims} claims stand as they did before this list.` };
}
