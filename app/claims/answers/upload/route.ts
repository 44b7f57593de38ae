import { z } from "zod";
import { todayIn } from "@/app/_clock/today";
import { problem } from "@/app/_http/problem";
import { mayCall } from "@/app/_people/may-call";
import { readOnly } from "@/db/client";
import { loadShop } from "@/db/queries/shop";
import { keepRemittance } from "@/db/writes/money/keep-remittance";
import { readDay } from "@/lib/calendar/day";
import { currencies } from "@/lib/domain/money";

export const dynamic = "force-dynamic";

const mostBytes = 20 * 1024 * 1024;
const fields = z.object({
  payer: z.string().trim().min(1).max(200),
  reference: z.string().trim().min(1).max(200),
  on: z.string(),
  currency: z.enum(currencies),
});

/** Takes a payer's list with the payment it belongs to. Answers with its address, or with what is to be put right. */
export async function POST(request: Request): Promise<Response> {
  const caller = await mayCall(request, "POST /claims/answers/upload");
  if (!caller.ok) return caller.response;
  if (Number(request.headers.get("content-length") ?? "0") > mostBytes + 10_000)
    return problem(413, "The file is too large", "A payer's list may have 20 MB.");
  const form = await request.formData().catch(() => undefined);
  const file = form?.get("file");
  if (form === undefined || !(file instanceof File) || file.size === 0)
    return problem(400, "No file", "Choose the payer's list: a CSV or XLSX file with a heading and at least one line.");
  if (file.size > mostBytes) return problem(413, "The file is too large", "A payer's list may have 20 MB.");
  const read = fields.safeParse(Object.fromEntries([...form].filter(([, value]) => typeof value === "string")));
  const paidOn = read.success ? readDay(read.data.on) : undefined;
  if (!read.success || paidOn === undefined)
    return problem(
      400,
      "Something is missing",
      "Enter the payer, the number of the payment, its day and its currency.",
    );
  const { payer, reference, currency } = read.data;
  const today = await readOnly(async (db) => todayIn((await loadShop(db)).timeZone));
  if (paidOn > today) return problem(400, "A day ahead", `${paidOn} has not come yet. Enter the day of the payment.`);
  const kept = await keepRemittance({
    fileName: file.name.replaceAll(/\p{Cc}/gu, " ").slice(0, 200),
    content: Buffer.from(await file.arrayBuffer()),
    payer,
    reference,
    paidOn,
    currency,
    by: caller.person.name,
    at: new Date().toISOString(),
    today,
  });
  if (kept.kind === "unreadable")
    return problem(422, "This is no list", kept.problems.map(({ problem: what, fix }) => `${what} ${fix}`).join(" "));
  return Response.json(
    { address: `/claims/answers/${kept.remittanceId}${kept.kind === "known" ? "?came=again" : ""}` },
    { status: kept.kind === "kept" ? 201 : 200 },
  );
}
