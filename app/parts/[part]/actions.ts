"use server";
import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { mayDo } from "@/app/_people/may-do";
import { keepPartTerms } from "@/db/writes/parts/keep-part-terms";
import { recordMovement, type StockEntry } from "@/db/writes/parts/record-movement";
import { settleOutlooks } from "@/db/writes/parts/settle-outlooks";
import { normalised } from "@/lib/domain/normalised";
import { criticalities } from "@/lib/domain/stock";
import { enteredBy } from "../_components/entered-by";
import { FormTexts } from "../_components/form-texts";
import type { OnceState } from "../_components/once-form";
import { partHref } from "../read-parts-address";

const entryKinds = ["count", "receipt", "return", "scrap", "move", "reserve", "release"] as const;

/** Enters one thing that happened to a part's stock. */
export async function enterStock(_previous: OnceState, form: FormData): Promise<OnceState> {
  const person = await mayDo("parts.change");
  const texts = new FormTexts(form);
  const { today, ...entered } = await enteredBy(texts, person.name);
  const partNumber = texts.optional("part") ?? "";
  const entry = readEntry(texts);
  const happenedOn = texts.pastDay("on", "Day", today);
  if (texts.problems.length > 0) return { problems: texts.problems };
  const note = texts.optional("note") ?? "";
  const answer = await recordMovement({ partNumber, entry, happenedOn, note, ...entered });
  if (answer.kind === "refused") return { problems: [{ field: answer.field, text: answer.sentence }] };
  return done(partNumber, "entered");
}

function readEntry(texts: FormTexts): StockEntry {
  const kind = texts.oneOf("kind", entryKinds, "What happened: choose one.");
  const place = texts.optional("place") ?? "";
  const pieces = texts.needed("pieces", "Pieces", kind === "count" ? 0 : 1);
  if (kind === "count") return { kind, place, counted: pieces };
  if (kind === "move") return { kind, place, to: texts.optional("to") ?? "", pieces };
  if (kind === "reserve" || kind === "release") {
    const jobNumber = texts.optional("job") ?? texts.wrong("job", "Job: say for which job it is put aside.", "");
    return { kind, place, pieces, jobNumber };
  }
  return { kind, place, pieces };
}

/** Says how a part is bought and how sure the company wants to be. */
export async function keepTerms(_previous: OnceState, form: FormData): Promise<OnceState> {
  const person = await mayDo("parts.change");
  const texts = new FormTexts(form);
  const { today, ...entered } = await enteredBy(texts, person.name);
  const partNumber = texts.optional("part") ?? "";
  const terms = {
    leadDays: readLeadDays(texts),
    reviewDays: texts.whole("reviewDays", "Days between two looks", 1, 7),
    pack: texts.whole("pack", "Pack", 1, 1),
    orderCostCents: texts.cents("orderCost", "Cost of an order") ?? 0,
    holdingPercent: texts.whole("holdingPercent", "Holding", 0, 20),
    criticality: texts.oneOf("criticality", criticalities, "How badly a job needs it: choose one."),
    shortOneIn: texts.whole("shortOneIn", "Risk", 2, 10),
    supplier: texts.optional("supplier") ?? "",
    unitCostCents: texts.cents("unitCost", "Cost of one"),
    supersededBy: texts.optional("supersededBy"),
    lastBuyOn: texts.day("lastBuyOn", "Last day to order"),
  };
  if (terms.reviewDays > 365) texts.wrong("reviewDays", "Days between two looks: a year at most.", 0);
  if (terms.pack > 100_000) texts.wrong("pack", "Pack: 100,000 pieces at most.", 0);
  if (terms.holdingPercent > 500) texts.wrong("holdingPercent", "Holding: 500 percent at most.", 0);
  if (terms.shortOneIn > 1000) texts.wrong("shortOneIn", "Risk: 1 in 1,000 at most.", 0);
  const seenVersion = texts.whole("version", "Version", 0, 0);
  if (texts.problems.length > 0) return { problems: texts.problems };
  const answer = await keepPartTerms({ partNumber, seenVersion, terms, today, ...entered });
  if (answer.kind === "refused") return { problems: [{ field: answer.field, text: answer.sentence }] };
  await settleOutlooks();
  return done(partNumber, "kept");
}

/** "5" as the supplier states it, or "4, 6, 5, 9" as deliveries were. */
function readLeadDays(texts: FormTexts): readonly number[] {
  const words = (texts.optional("leadDays") ?? "").split(/[\s,;]+/).filter((word) => word !== "");
  const odd = words.find((word) => !/^\d{1,3}$/.test(word));
  if (odd !== undefined)
    return texts.wrong(
      "leadDays",
      `Lead time: “${odd.slice(0, 20)}” is no number of days; write 5, or deliveries as 4, 6, 9.`,
      [],
    );
  if (words.some((word) => Number(word) === 0))
    return texts.wrong(
      "leadDays",
      "Lead time: 0 days would mean that it is there before it is ordered. Write 1 where it comes within a day; leave it blank where you do not keep the part.",
      [],
    );
  return words.map(Number);
}

function done(partNumber: string, word: "entered" | "kept"): never {
  revalidatePath("/parts");
  redirect(`${partHref(normalised(partNumber))}?done=${word}`);
}
