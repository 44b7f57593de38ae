"use server";
import { revalidatePath } from "next/cache";
import { publishSheet } from "@/db/writes/sheets/publish-sheet";
import { productTypeKeys } from "@/lib/domain/product-type";
import { checkOf } from "@/lib/evidence/checks";
import { sheetKey } from "@/lib/sheets/sheet";
import { parseSheetDocument } from "@/lib/sheets/sheet-document";
import { shippedSheet } from "@/lib/sheets/shipped-sheets";

export interface PublishState {
  readonly problems: readonly string[];
  readonly published: number | undefined;
}

export async function publish(_previous: PublishState, form: FormData): Promise<PublishState> {
  const productType = productTypeKeys.find((key) => key === form.get("productType"));
  const shipped = productType === undefined ? undefined : shippedSheet(productType, String(form.get("component")));
  if (shipped === undefined) return refuse("There is no such sheet. Open it again from the list.");
  const read = parseSheetDocument(parsed(String(form.get("document"))));
  if (!read.ok) return { problems: read.problems, published: undefined };
  const reason = String(form.get("reason") ?? "")
    .trim()
    .slice(0, 500);
  if (reason === "") return refuse("Say why the sheet is changed.");
  const missing = shipped.steps.filter(({ check }) => !read.steps.some((step) => step.check === check));
  if (missing.length > 0)
    return refuse(
      `The rules of evidence ask for ${missing.map(({ check }) => checkOf(check)?.name ?? check).join(", ")}: it cannot be left out.`,
    );
  const result = await publishSheet({
    sheet: { ...shipped, steps: read.steps },
    editedFrom: Number(form.get("editedFrom")),
    by: "the shop",
    reason,
  });
  if (result.kind === "moved on")
    return refuse(`Version ${result.version} was published meanwhile. Open the sheet again and edit that one.`);
  revalidatePath(`/shop/sheets/${sheetKey(shipped)}`);
  return { problems: [], published: result.version };
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

function refuse(sentence: string): PublishState {
  return { problems: [sentence], published: undefined };
}
