"use server";
import { revalidatePath } from "next/cache";
import { mayDo } from "@/app/_people/may-do";
import { publishSheet } from "@/db/writes/sheets/publish-sheet";
import { dropSheetDraft, saveSheetDraft } from "@/db/writes/sheets/save-sheet-draft";
import { productTypeKeys } from "@/lib/domain/product-type";
import { parsedJson } from "@/lib/format/parsed-json";
import { looseSteps } from "@/lib/sheets/loose-sheet";
import { type Sheet, sheetKey } from "@/lib/sheets/sheet";
import { parseSheetDocument } from "@/lib/sheets/sheet-document";
import { sheetProblems } from "@/lib/sheets/sheet-rules";
import { shippedSheet } from "@/lib/sheets/shipped-sheets";

export interface EditState {
  readonly problems: readonly string[];
  /** What was done, in a sentence. */
  readonly done: string | undefined;
}

/** Room for any sheet that people would work by. */
const largestDocument = 200_000;

/** Keeps the draft, publishes it as a version, or drops it, as the button says. */
export async function editSheet(_previous: EditState, form: FormData): Promise<EditState> {
  const person = await mayDo("checks.change");
  const text = (name: string) => String(form.get(name) ?? "").trim();
  const productType = productTypeKeys.find((key) => key === form.get("productType"));
  const shipped = productType === undefined ? undefined : shippedSheet(productType, text("component"));
  if (shipped === undefined) return refuse("There is no such sheet. Open it again from the list.");
  const document = text("document");
  if (document.length > largestDocument)
    return refuse("The sheet is longer than anybody would work by. Shorten its texts.");
  const asked = {
    shipped,
    by: person.name,
    editedFrom: Number(form.get("editedFrom")),
    revision: Number(form.get("revision")),
  };
  switch (text("act")) {
    case "drop":
      return await drop(asked);
    case "publish":
      return await publish(asked, parsedJson(document), text("reason").slice(0, 500));
    default:
      return await save(asked, parsedJson(document));
  }
}

interface Asked {
  readonly shipped: Sheet;
  readonly by: string;
  readonly editedFrom: number;
  readonly revision: number;
}

async function save({ shipped, ...asked }: Asked, document: unknown): Promise<EditState> {
  const steps = looseSteps(document);
  if (steps.length === 0) return refuse("The sheet did not arrive whole. Load this page again.");
  const saved = await saveSheetDraft({ sheet: shipped, document: { steps }, ...asked });
  if (saved.kind === "moved on") return refuse(movedOn(saved.by));
  revalidatePath(pathOf(shipped));
  return { problems: [], done: "The draft is kept. It holds for no job until it is published." };
}

async function publish(
  { shipped, editedFrom, revision, by }: Asked,
  document: unknown,
  reason: string,
): Promise<EditState> {
  const read = parseSheetDocument(document);
  if (!read.ok) return { problems: read.problems.map(({ sentence }) => sentence), done: undefined };
  const sheet = { ...shipped, steps: read.steps };
  const problems = sheetProblems(sheet, shipped);
  if (problems.length > 0) return { problems: problems.map(({ sentence }) => sentence), done: undefined };
  if (reason === "") return refuse("Why is blank. It stands beside the version from then on.");
  const result = await publishSheet({ sheet, editedFrom, revision, by, reason });
  if (result.kind === "draft moved on") return refuse(movedOn(result.by));
  if (result.kind === "moved on")
    return refuse(`Version ${result.version} was published meanwhile. Open the sheet again and edit that one.`);
  revalidatePath(pathOf(shipped));
  return { problems: [], done: `Version ${result.version} holds for jobs that are begun from now on.` };
}

async function drop({ shipped, revision }: Asked): Promise<EditState> {
  if (!(await dropSheetDraft(shipped, revision))) return refuse(movedOn(undefined));
  revalidatePath(pathOf(shipped));
  return { problems: [], done: "The draft is dropped." };
}

function movedOn(by: string | undefined): string {
  return `${by === undefined ? "The draft was published or dropped" : `${by} saved this draft`} meanwhile. What you typed stays on this screen; open the sheet in another tab to compare.`;
}

function pathOf(sheet: Sheet): string {
  return `/shop/sheets/${sheetKey(sheet)}`;
}

function refuse(sentence: string): EditState {
  return { problems: [sentence], done: undefined };
}
