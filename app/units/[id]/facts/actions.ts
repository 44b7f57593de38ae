"use server";
import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { z } from "zod";
import { todayIn } from "@/app/_clock/today";
import { mayDo } from "@/app/_people/may-do";
import type { FieldProblem } from "@/app/_ui/error-summary";
import { readOnly } from "@/db/client";
import { loadShop } from "@/db/queries/shop";
import { loadUnit } from "@/db/queries/unit";
import { dropRepairSpan, saveRepairSpan, saveUnitFacts } from "@/db/writes/coverage/unit-facts";
import { saveUnitRegister } from "@/db/writes/coverage/unit-register";
import { readDay } from "@/lib/calendar/day";
import { readFactsForm, readSpanForm } from "./read-facts-form";
import { readRegisterForm } from "./read-register-form";

export interface FactsState {
  readonly problems: readonly FieldProblem[];
  /** What was typed, shown again while something is wrong. */
  readonly texts: Readonly<Record<string, string>>;
}

const unitNumber = z.string().regex(/^\d{1,19}$/);

export async function keepFacts(_previous: FactsState, form: FormData): Promise<FactsState> {
  const person = await mayDo("units.change");
  form.set("by", person.name);
  form.set("spanBy", person.name);
  form.set("registerBy", person.name);
  const { unitId, texts } = textsOf(form);
  const read = readFactsForm(texts);
  if (!read.ok) return { problems: read.problems, texts };
  await saveUnitFacts({ unitId, ...read.value });
  return done(unitId);
}

export async function keepRegister(_previous: FactsState, form: FormData): Promise<FactsState> {
  const person = await mayDo("units.change");
  form.set("by", person.name);
  form.set("spanBy", person.name);
  form.set("registerBy", person.name);
  const { unitId, texts } = textsOf(form);
  const { found, timeZone } = await readOnly(async (db) => ({
    found: await loadUnit(db, unitId),
    timeZone: (await loadShop(db)).timeZone,
  }));
  if (found === undefined) return { problems: [{ text: "This unit is no longer on file." }], texts };
  const read = readRegisterForm(texts, found.unit, todayIn(timeZone));
  if (!read.ok) return { problems: read.problems, texts };
  await saveUnitRegister({ unitId, ...read.value });
  return done(unitId);
}

export async function keepSpan(_previous: FactsState, form: FormData): Promise<FactsState> {
  const person = await mayDo("units.change");
  form.set("by", person.name);
  form.set("spanBy", person.name);
  form.set("registerBy", person.name);
  const { unitId, texts } = textsOf(form);
  const read = readSpanForm(texts);
  if (!read.ok) return { problems: read.problems, texts };
  await saveRepairSpan({ unitId, ...read.value });
  return done(unitId);
}

export async function dropSpan(form: FormData): Promise<void> {
  await mayDo("units.change");
  const { unitId, texts } = textsOf(form);
  const fromOn = readDay(texts.fromOn ?? "");
  if (fromOn !== undefined) await dropRepairSpan(unitId, fromOn);
  done(unitId);
}

function done(unitId: string): never {
  revalidatePath(`/units/${unitId}`);
  redirect(`/units/${unitId}/facts?kept=yes`);
}

function textsOf(form: FormData) {
  const texts: Record<string, string> = {};
  for (const [name, value] of form) if (typeof value === "string") texts[name] = value;
  return { unitId: unitNumber.parse(texts.unit), texts };
}
