// The sections that are words and tables; readings and photos have files of their own.
import type { ClaimLine } from "@/lib/claims/claim";
import type { ClaimPacket } from "@/lib/claims/packet";
import { formatCount } from "@/lib/format/format-count";
import { formatDay } from "@/lib/format/format-day";
import { formatMoney } from "@/lib/format/format-money";
import { formatReadingNumber } from "@/lib/format/format-reading";
import {
  asWritten,
  evidenceNote,
  fileWords,
  invoiceWords,
  itemStateNames,
  lineName,
  storyFacts,
  takenWords,
} from "../packet-words";
import { unprintableWords } from "./clean";
import { say, sayFacts, sayHeading, sayList, styles } from "./say";
import type { Sheet } from "./sheet";
import { type Cell, drawTable } from "./table";

export function drawCoverage(sheet: Sheet, { coverage, cover }: ClaimPacket): void {
  sayList(
    sheet,
    coverage.items.map(({ sentence }) => sentence),
  );
  part(sheet, "Arithmetic", coverage.arithmetic);
  part(sheet, "Where the wording decides", coverage.boundary);
  part(sheet, "Other cover looked at", coverage.others);
  part(sheet, "Law", coverage.statutory);
  sayFacts(sheet, [{ term: "Rule source", detail: cover.policySource }]);
  say(sheet, coverage.defer, styles.note);
}

export function drawStory(sheet: Sheet, packet: ClaimPacket): void {
  const { story, evidence } = packet;
  const written = [
    ["Complaint", story.complaint],
    ["Cause", story.cause],
    ["Correction", story.correction],
  ] as const;
  for (const [name, text] of written) {
    sayHeading(sheet, `${name}, as written`, styles.subheading, 30);
    say(sheet, asWritten(text));
  }
  sayHeading(sheet, "As coded");
  sayFacts(sheet, storyFacts(packet));
  sayHeading(sheet, "Evidence");
  say(sheet, evidence.verdict);
  if (evidence.items.length === 0) return;
  drawTable(
    sheet,
    [
      { head: "What is needed", share: 0.36 },
      { head: "State", share: 0.16 },
      { head: "Where it is, or what would supply it", share: 0.48 },
    ],
    evidence.items.map((item) => [
      { text: item.label, note: item.mark },
      { text: itemStateNames[item.state], style: styles.smallBold },
      { text: evidenceNote(packet, item) },
    ]),
  );
}

export function drawMoney(sheet: Sheet, { money }: ClaimPacket): void {
  const { currency, lines, deductions, totalCents } = money;
  const amount = (cents: number): Cell => ({ text: formatMoney({ cents, currency }), style: styles.figures });
  drawTable(
    sheet,
    [
      { head: "Item", share: 0.24 },
      { head: "Part and invoice", share: 0.22 },
      { head: "Quantity", share: 0.1, align: "right" },
      { head: "How the amount came about", share: 0.26 },
      { head: "Amount", share: 0.18, align: "right" },
    ],
    [
      ...lines.map((line) => lineCells(line, amount)),
      ...deductions.map((deduction): readonly Cell[] => [
        { text: "Taken off" },
        { text: "" },
        { text: "" },
        { text: deduction.basis },
        amount(-Math.abs(deduction.cents)),
      ]),
      [{ text: "Total", style: styles.smallBold }, { text: "" }, { text: "" }, { text: "" }, amount(totalCents)],
    ],
  );
}

export function drawDocuments(sheet: Sheet, packet: ClaimPacket): void {
  const { documents } = packet;
  if (documents.length === 0) {
    say(sheet, "No documents are part of this packet.");
    return;
  }
  sayList(
    sheet,
    documents.map((file) => `${file.name}. ${fileWords(file)}, ${takenWords(file, packet)}.`),
  );
}

export function drawHistory(sheet: Sheet, { history }: ClaimPacket): void {
  if (history.length === 0) {
    say(sheet, "No earlier jobs on this unit are on file.");
    return;
  }
  drawTable(
    sheet,
    ["Job", "Completed", "Symptom", "Component", "Cause"].map((head) => ({ head, share: 0.2 })),
    history.map(({ jobNumber, completedOn, symptom, component, causeName }) => [
      { text: jobNumber, style: styles.figures },
      { text: formatDay(completedOn) },
      { text: symptom ?? "Not coded" },
      { text: component ?? "Not coded" },
      { text: causeName },
    ]),
  );
}

export function drawManifest(sheet: Sheet, { manifest, notSupplied }: ClaimPacket): void {
  part(sheet, "What is missing", notSupplied);
  if (notSupplied.length === 0) say(sheet, "Nothing that this claim needs is missing.");
  sayHeading(sheet, "Files");
  if (manifest.length === 0) {
    say(sheet, "No files belong to this packet.");
    sayUnprintable(sheet);
    return;
  }
  drawTable(
    sheet,
    [
      { head: "File", share: 0.28 },
      { head: "Bytes", share: 0.12, align: "right" },
      { head: "SHA-256", share: 0.6 },
    ],
    manifest.map(({ name, bytes, sha256 }) => [
      { text: name },
      { text: formatCount(bytes), style: styles.figures },
      { text: sha256, style: { ...styles.figures, size: 7 } },
    ]),
  );
  sayUnprintable(sheet);
}

/** The manifest is the last section, so every letter has been tried by then. */
function sayUnprintable(sheet: Sheet): void {
  const words = unprintableWords(sheet);
  if (words !== undefined) say(sheet, words, styles.note);
}

function lineCells(line: ClaimLine, amount: (cents: number) => Cell): readonly Cell[] {
  return [
    { text: lineName(line), note: line.description },
    { text: line.partNumber ?? "", style: styles.figures, note: invoiceWords(line) },
    { text: formatReadingNumber(line.quantity), style: styles.figures },
    { text: line.basis },
    amount(line.cents),
  ];
}

function part(sheet: Sheet, title: string, lines: readonly string[]): void {
  if (lines.length === 0) return;
  sayHeading(sheet, title, styles.subheading, 30);
  sayList(sheet, lines);
}
