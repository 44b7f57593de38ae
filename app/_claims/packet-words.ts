import { instantOnClock } from "@/lib/calendar/instant";
import type { ClaimLine } from "@/lib/claims/claim";
import type { ClaimPacket, PacketFile, PacketReading, PacketSection } from "@/lib/claims/packet";
import { itemNames } from "@/lib/coverage/describe-coverage";
import type { MeterMode, PowerState } from "@/lib/domain/reading";
import { type Caution, cautions } from "@/lib/evidence/cautions";
import type { EvidenceItem, EvidencePlace, ItemState } from "@/lib/evidence/evidence-check";
import { inUnit } from "@/lib/evidence/units";
import { formatCount, formatCounted } from "@/lib/format/format-count";
import { formatDay, formatDaysLeft } from "@/lib/format/format-day";
import { formatMoney } from "@/lib/format/format-money";
import { formatOutcome, formatRange, type OpenRange } from "@/lib/format/format-reading";

/** Words that the page and the PDF of a packet share, so that a payer reads the same in both. */
export interface Fact {
  readonly term: string;
  readonly detail: string;
}

/** "Claim C-2025-0001 · serial HW2100001 · section 2 of 8": each section can stand alone on a desk. */
export function sectionLine({ cover, index }: ClaimPacket, section: PacketSection): string {
  const serial = cover.serial ?? "not supplied";
  return `${claimName(cover)} · serial ${serial} · section ${section.number} of ${index.length}`;
}

export function claimName({ claimNumber, jobNumber }: ClaimPacket["cover"]): string {
  return claimNumber === undefined ? `Claim draft for job ${jobNumber}` : `Claim ${claimNumber}`;
}

export function packetTitle({ cover }: ClaimPacket): string {
  return `${claimName(cover)}: ${cover.maker} ${cover.model}, serial ${cover.serial ?? "not supplied"}`;
}

export function unitFacts({ cover }: ClaimPacket): readonly Fact[] {
  return [
    { term: "Maker", detail: cover.maker },
    { term: "Model", detail: cover.model },
    { term: "Serial", detail: cover.serial ?? "Not supplied" },
    { term: "Product type", detail: cover.productType },
  ];
}

export function claimFacts({ cover, money }: ClaimPacket): readonly Fact[] {
  const { filing } = cover;
  return [
    { term: "Amount claimed", detail: formatMoney({ cents: money.totalCents, currency: money.currency }) },
    { term: "Payer", detail: cover.payer },
    { term: "Policy", detail: `${cover.policy}, version ${formatCount(cover.policyVersion)}` },
    { term: "Rule source", detail: cover.policySource },
    ...optional("Campaign", cover.campaign),
    ...optional("Authorization number", cover.authorizationNumber),
    {
      term: "File by",
      detail: `${formatDay(filing.lastDay)}, ${filingWords[filing.by]}; ${formatDaysLeft(filing.daysLeft)} when prepared`,
    },
    { term: "Job", detail: cover.jobNumber },
    { term: "Servicer", detail: cover.servicer },
    { term: "Prepared", detail: formatDay(cover.preparedOn) },
    { term: "Clock times", detail: `in the zone ${cover.timeZone}` },
  ];
}

export function dateFacts({ cover }: ClaimPacket): readonly Fact[] {
  return cover.dates.map(({ label, on }) => ({ term: label, detail: formatDay(on) }));
}

export function storyFacts({ story }: ClaimPacket): readonly Fact[] {
  return [
    ...optional("Symptom", story.symptom),
    ...optional("Component", story.component),
    ...optional("Failure mode", story.failureMode),
    { term: "Cause", detail: story.causeName },
  ];
}

export function asWritten(text: string): string {
  return text.trim() === "" ? "Nothing was written." : text;
}

/** What the contents list says a section holds; undefined where its one entry goes without saying. */
export function sectionHolds({ key, entries }: PacketSection): string | undefined {
  const noun = sectionNouns[key];
  if (noun === undefined) return undefined;
  return entries === 0 ? `no ${noun}s` : formatCounted(entries, noun);
}

/** "02-fault-code.jpg, reading 3". */
function placesInWords(packet: ClaimPacket, places: readonly EvidencePlace[]): string {
  const files = new Map([...packet.photos, ...packet.documents].map(({ id, name }) => [id, name]));
  return places.map((place) => placeInWords(place, files)).join(", ");
}

export function readingState({ power, conditions }: PacketReading): string {
  return [powerNames[power], ...conditions].join("; ");
}

export function expectedWords({ range }: PacketReading): string {
  return range === undefined ? "No expected range" : formatRange(range);
}

export function rangeSourceWords({ range }: PacketReading): string | undefined {
  return range === undefined ? undefined : `${range.source} (${range.mark})`;
}

/** Value and range in the range's unit, for a drawing; undefined where they cannot be set against each other. */
export function readingOnRange({
  outcome,
  range,
}: PacketReading): { readonly value: number; readonly expected: OpenRange } | undefined {
  if (range === undefined || outcome.kind !== "number") return undefined;
  const value = inUnit(outcome.value, outcome.unit, range.unit);
  return value === undefined ? undefined : { value, expected: range };
}

/** Where it was found, or what would supply it. */
export function evidenceNote(packet: ClaimPacket, { state, foundIn, whatWouldFixIt }: EvidenceItem): string {
  if (state === "in_place") return placesInWords(packet, foundIn);
  return state === "missing" ? whatWouldFixIt : "";
}

export function lineName({ item }: ClaimLine): string {
  return item === "handling" ? "Handling" : itemNames[item];
}

export function invoiceWords({ invoiceNumber, invoiceLine }: ClaimLine): string | undefined {
  if (invoiceNumber === undefined) return undefined;
  return `invoice ${invoiceNumber}${invoiceLine === undefined ? "" : `, line ${invoiceLine}`}`;
}

/** Cautions of the readings that were taken live, each once, and last the one that stands above all of them. */
export function liveCautions({ readings }: ClaimPacket): readonly Caution[] {
  const keys = readings.filter(({ power }) => power === "live").flatMap((reading) => reading.cautions);
  return [...new Set([...keys.filter((key) => key !== "sheet_decides"), "sheet_decides" as const])].map(
    (key) => cautions[key],
  );
}

/** "Meter showing the reading: winding, OL". */
export function fileWords({ subject, caption }: PacketFile): string {
  return caption === "" ? subject : `${subject}: ${caption}`;
}

/** "taken 2025-03-05 10:15, as the device said": on the clocks of the shop's zone, which the cover names. */
export function takenWords({ takenAt }: Pick<PacketFile, "takenAt">, { cover }: Pick<ClaimPacket, "cover">): string {
  return takenAt === undefined
    ? "time not stated"
    : `taken ${instantOnClock(takenAt, cover.timeZone)}, as the device said`;
}

/** What the drawing of a reading shows, for whoever can't see it. */
export function gaugeWords(reading: PacketReading): string {
  return `Scale with the expected range ${expectedWords(reading)} and a mark at ${formatOutcome(reading.outcome)}. ${reading.verdictWords}.`;
}

/** What stands for a picture where it can't be seen. */
export function photoAlt(photo: PacketFile): string {
  return `Photo ${photo.name}. ${fileWords(photo)}`;
}

export function shortHash({ sha256 }: PacketFile): string {
  return sha256.slice(0, 12);
}

export const meterModeNames: Readonly<Record<MeterMode, string>> = {
  ohm: "Resistance",
  continuity: "Continuity",
  volt_ac: "Volts AC",
  volt_dc: "Volts DC",
  ampere: "Amperes",
  microfarad: "Capacitance",
  inch: "Inches",
  inch_water: "Inches of water",
  psi: "Pressure, psi",
  degree_f: "Temperature, °F",
  degree_c: "Temperature, °C",
  observation: "Seen",
  fault_code: "Fault code",
};

export const itemStateNames: Readonly<Record<ItemState, string>> = {
  in_place: "In place",
  missing: "Missing",
  does_not_apply: "Does not apply",
};

const powerNames: Readonly<Record<PowerState, string>> = {
  off: "power off",
  powered_panels_closed: "powered, panels closed",
  live: "live",
};

const filingWords = { sending: "day of sending counts", receipt: "day of receipt counts" } as const;

const sectionNouns: Readonly<Partial<Record<PacketSection["key"], string>>> = {
  readings: "reading",
  money: "line",
  photos: "photo",
  documents: "document",
  history: "job",
  manifest: "file",
};

function placeInWords(place: EvidencePlace, files: ReadonlyMap<string, string>): string {
  switch (place.kind) {
    case "reading":
      return `reading ${place.number}`;
    case "attachment":
      return files.get(place.id) ?? place.id;
    case "part_line":
      return `part line ${place.line}`;
    case "job":
      return place.field === "cause" ? "cause" : "authorization number";
  }
}

function optional(term: string, detail: string | undefined): readonly Fact[] {
  return detail === undefined ? [] : [{ term, detail }];
}
