"use server";
import { revalidatePath } from "next/cache";
import { mayDo } from "@/app/_people/may-do";
import type { FieldProblem } from "@/app/_ui/error-summary";
import { readOnly } from "@/db/client";
import { loadSheetVersions } from "@/db/queries/sheet-versions";
import { liftOwnRange, setOwnRange } from "@/db/writes/sheets/own-range";
import { productTypeKeys } from "@/lib/domain/product-type";
import { formatRange } from "@/lib/format/format-reading";
import { parseRangeForm } from "@/lib/sheets/range-form";
import { checkOfStep, type Sheet } from "@/lib/sheets/sheet";
import { shippedSheet } from "@/lib/sheets/shipped-sheets";

export interface RangeState {
  readonly problems: readonly FieldProblem[];
  readonly texts: Readonly<Record<string, string>>;
  readonly done: string | undefined;
}

const fields = ["model", "check", "low", "high", "unit", "condition", "source", "mark", "setBy", "setWhy"] as const;

export async function setRange(_previous: RangeState, form: FormData): Promise<RangeState> {
  const person = await mayDo("checks.change");
  form.set("setBy", person.name);
  const text = (name: string) =>
    String(form.get(name) ?? "")
      .trim()
      .slice(0, 500);
  const texts = Object.fromEntries(fields.map((name) => [name, text(name)]));
  const sheet = await sheetAt(text("path"));
  if (sheet === undefined)
    return { problems: [{ text: "There is no such sheet. Open it again from the list." }], texts, done: undefined };
  const step = sheet.steps.find((each) => each.check === text("check"));
  const check = step === undefined ? undefined : checkOfStep(step);
  const modelId = Number(text("model"));
  const missing: FieldProblem[] = [
    ...(Number.isInteger(modelId) && modelId > 0 ? [] : [{ field: "model", text: "Choose the model." }]),
    ...(check === undefined ? [{ field: "check", text: "Choose the check that is measured." }] : []),
    ...(text("setBy") === "" ? [{ field: "setBy", text: "Your name is blank. It stands beside the range." }] : []),
    ...(text("setWhy") === "" ? [{ field: "setWhy", text: "Why is blank. It stands beside the range." }] : []),
  ];
  const read =
    check === undefined
      ? undefined
      : parseRangeForm(
          {
            low: text("low"),
            high: text("high"),
            unit: text("unit"),
            condition: text("condition"),
            source: text("source"),
            mark: text("mark"),
          },
          check,
        );
  const wrong = read === undefined || read.ok ? [] : read.problems;
  if (read === undefined || !read.ok || missing.length > 0)
    return { problems: [...missing, ...wrong], texts, done: undefined };
  const result = await setOwnRange({
    modelId,
    range: read.range,
    by: text("setBy").slice(0, 100),
    reason: text("setWhy"),
  });
  if (result === "no such model")
    return {
      problems: [{ field: "model", text: "This model is no longer on file. Choose another." }],
      texts,
      done: undefined,
    };
  revalidatePath(text("path"));
  return {
    problems: [],
    texts: { setBy: texts.setBy ?? "", model: texts.model ?? "" },
    done: `${check?.name ?? "The check"}: ${formatRange(read.range)} is expected from now on. Jobs that nothing was sent of are judged anew by it.`,
  };
}

export async function liftRange(form: FormData): Promise<void> {
  const person = await mayDo("checks.change");
  const rangeId = Number(form.get("range"));
  if (Number.isInteger(rangeId) && rangeId > 0) await liftOwnRange(rangeId, person.name);
  if ((await sheetAt(String(form.get("path")))) !== undefined) revalidatePath(String(form.get("path")));
}

/** The sheet in force at an address such as /shop/sheets/dishwasher/drain_pump. */
async function sheetAt(path: string): Promise<Sheet | undefined> {
  const [, , , type, component = ""] = path.split("/");
  const productType = productTypeKeys.find((key) => key === type);
  const shipped = productType === undefined ? undefined : shippedSheet(productType, component);
  if (shipped === undefined) return undefined;
  return (await readOnly((db) => loadSheetVersions(db, shipped)))[0]?.sheet ?? shipped;
}
