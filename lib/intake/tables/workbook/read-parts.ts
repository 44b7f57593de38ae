import { Unreadable } from "../../unreadable";
import { damaged, missingPart, tooMany, unfoldsTooFar } from "./archive-problems";
import { builtInFormats, isDayFormat } from "./day-format";
import type { Archive } from "./open-archive";
import { readXmlWhole } from "./read-xml";

/** A workbook apart from the cells of its sheets. */
export interface WorkbookParts {
  readonly dateBase: 1900 | 1904;
  /** Sheets of cells in the order of their tabs, with the part that holds each. */
  readonly sheets: readonly { readonly name: string; readonly part: string }[];
  readonly sharedTexts: readonly string[];
  /** By style number of a cell: how its number is shown, where that makes a difference to what it says. */
  readonly formats: readonly (string | undefined)[];
}

/** @throws Unreadable where a part that cannot be done without is missing or damaged */
export async function readParts(archive: Archive): Promise<WorkbookParts> {
  const main = (await related(archive, "")).find(({ type }) => type === "officeDocument")?.target ?? "xl/workbook.xml";
  refuseOthers(archive, main);
  const parts = await related(archive, main);
  const { dateBase, tabs } = await readMain(archive, main);
  const sheets = tabs.flatMap(({ name, id }) => {
    const part = parts.find((each) => each.id === id);
    if (part === undefined) throw missingPart(`of the sheet ${name}`);
    return part.type === "worksheet" ? [{ name, part: part.target }] : []; // a sheet of charts has no cells
  });
  const texts = parts.find(({ type }) => type === "sharedStrings")?.target;
  const styles = parts.find(({ type }) => type === "styles")?.target;
  return {
    dateBase,
    sheets,
    sharedTexts: texts === undefined ? [] : await readSharedTexts(archive, texts),
    formats: styles === undefined ? [] : await readFormats(archive, styles),
  };
}

function refuseOthers(archive: Archive, main: string): void {
  const asXlsx = "Open it in a spreadsheet program and save it as XLSX, or its sheet as CSV.";
  if ([...archive.names].some((name) => name.endsWith("vbaProject.bin")))
    throw new Unreadable({ problem: "The workbook carries macros (XLSM), which are not taken in.", fix: asXlsx });
  if (main.endsWith(".bin")) throw new Unreadable({ problem: "This is a binary workbook (XLSB).", fix: asXlsx });
  if (archive.names.has("content.xml") && archive.names.has("mimetype"))
    throw new Unreadable({ problem: "This is an OpenDocument file (ODS), not XLSX.", fix: asXlsx });
  if (archive.names.has("word/document.xml"))
    throw new Unreadable({
      problem: "This is a text document (DOCX), not a workbook.",
      fix: "Choose the file that holds the rows.",
    });
  if (archive.names.has("[Content_Types].xml") && !archive.names.has(main)) throw missingPart(main);
  if (!archive.names.has(main))
    throw new Unreadable({
      problem: "This is a ZIP archive, not a workbook.",
      fix: "Unfold it and choose the file in it that holds the rows.",
    });
}

interface Related {
  readonly id: string;
  readonly type: string;
  readonly target: string;
}

/** Parts that a part refers to, by the list that stands beside it. */
async function related(archive: Archive, part: string): Promise<readonly Related[]> {
  const slash = part.lastIndexOf("/") + 1;
  const folder = part.slice(0, slash);
  const list = `${folder}_rels/${part.slice(slash)}.rels`;
  if (!archive.names.has(list)) {
    if (part === "") return [];
    throw missingPart(list);
  }
  const found: Related[] = [];
  await readXmlWhole(archive.part(list), {
    open(name, { Id = "", Type = "", Target = "", TargetMode }) {
      if (name !== "Relationship" || TargetMode === "External") return;
      found.push({ id: Id, type: Type.slice(Type.lastIndexOf("/") + 1), target: resolved(folder, Target) });
    },
  });
  return found;
}

function resolved(folder: string, target: string): string {
  try {
    return decodeURI(new URL(target, `part:///${folder}`).pathname.slice(1));
  } catch {
    throw damaged(new Error("one of its parts refers to a part by no name"));
  }
}

async function readMain(archive: Archive, main: string) {
  const tabs: { name: string; id: string }[] = [];
  let dateBase: 1900 | 1904 = 1900;
  await readXmlWhole(archive.part(main), {
    open(name, attributes) {
      if (name === "workbookPr" && /^(1|true)$/.test(attributes.date1904 ?? "")) dateBase = 1904;
      if (name === "sheet") tabs.push({ name: attributes.name ?? "", id: relationOf(attributes) });
    },
  });
  return { dateBase, tabs };
}

/** The prefix of the relation's attribute is the writer's choice. */
function relationOf(attributes: Readonly<Record<string, string>>): string {
  return Object.entries(attributes).find(([name]) => name.endsWith(":id"))?.[1] ?? "";
}

const mostTexts = 1_000_000;
const mostTextCharacters = 64_000_000;

async function readSharedTexts(archive: Archive, part: string): Promise<readonly string[]> {
  const texts: string[] = [];
  let characters = 0;
  const gather = textGatherer("si", (text) => {
    characters += text.length;
    if (texts.push(text) > mostTexts) throw tooMany(mostTexts, "different texts");
    if (characters > mostTextCharacters) throw unfoldsTooFar();
  });
  await readXmlWhole(archive.part(part), gather);
  return texts;
}

/** The text of rich text too, but not how it is pronounced, which stands beside it in some languages. */
export function textGatherer(element: string, take: (text: string) => void) {
  let text = "";
  let inside = false;
  let spoken = false;
  return {
    open(name: string) {
      if (name === element) text = "";
      else if (name === "rPh") spoken = true;
      else if (name === "t") inside = !spoken;
    },
    text(piece: string) {
      if (inside) text += piece;
    },
    close(name: string) {
      if (name === element) take(unescaped(text));
      else if (name === "rPh") spoken = false;
      else if (name === "t") inside = false;
    },
  };
}

/** Characters that XML cannot hold are written _x000D_ in workbooks, and an underscore before such a text _x005F_. */
export function unescaped(text: string): string {
  if (!text.includes("_x")) return text;
  return text.replaceAll(/_x([0-9A-Fa-f]{4})_/g, (_, code: string) => String.fromCharCode(Number.parseInt(code, 16)));
}

async function readFormats(archive: Archive, part: string): Promise<readonly (string | undefined)[]> {
  const codes = new Map<string, string>(builtInFormats);
  const formats: (string | undefined)[] = [];
  let inCells = false;
  await readXmlWhole(archive.part(part), {
    open(name, { numFmtId = "0", formatCode = "" }) {
      if (name === "numFmt") codes.set(numFmtId, formatCode);
      else if (name === "cellXfs") inCells = true;
      else if (name === "xf" && inCells) formats.push(telling(codes.get(numFmtId)));
    },
    close(name) {
      if (name === "cellXfs") inCells = false;
    },
  });
  return formats;
}

/** Formats that show a number as a day, a time, or with zeros in front. */
function telling(code: string | undefined): string | undefined {
  return code !== undefined && (isDayFormat(code) || /^0{2,}$/.test(code)) ? code : undefined;
}
