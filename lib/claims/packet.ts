// The content of a claim packet as data. The page and the PDF are both drawn from it, so they cannot disagree.
import type { Day } from "@/lib/calendar/day";
import type { CoverageWords } from "@/lib/coverage/describe-coverage";
import type { Currency } from "@/lib/domain/money";
import type { MeterMode, PowerState, ReadingOutcome, SourceMark } from "@/lib/domain/reading";
import type { CautionKey } from "@/lib/evidence/cautions";
import type { EvidenceCheck, WordWarning } from "@/lib/evidence/evidence-check";
import type { Judgement } from "@/lib/evidence/judge-reading";
import type { ClaimDeduction, ClaimFiling, ClaimLine } from "./claim";

export interface ClaimPacket {
  readonly cover: PacketCover;
  readonly index: readonly PacketSection[];
  readonly coverage: CoverageWords;
  readonly story: PacketStory;
  readonly evidence: Pick<EvidenceCheck, "kind" | "entryId" | "items" | "verdict">;
  readonly readings: readonly PacketReading[];
  readonly faultCodes: readonly { readonly reading: number; readonly code: string }[];
  readonly money: {
    readonly currency: Currency;
    readonly lines: readonly ClaimLine[];
    readonly deductions: readonly ClaimDeduction[];
    readonly totalCents: number;
  };
  readonly photos: readonly PacketFile[];
  readonly documents: readonly PacketFile[];
  readonly history: readonly PacketEarlierJob[];
  /** One sentence a missing thing, each beginning "Not supplied:". */
  readonly notSupplied: readonly string[];
  readonly warnings: readonly WordWarning[];
  /** Every file that belongs to the packet with its SHA-256, in the order of the packet. */
  readonly manifest: readonly ManifestEntry[];
}

export interface PacketCover {
  readonly claimNumber: string | undefined;
  readonly servicer: string;
  /** IANA name; instants are printed on its clocks. */
  readonly timeZone: string;
  readonly payer: string;
  readonly policy: string;
  readonly policyVersion: number;
  readonly policySource: string;
  readonly campaign: string | undefined;
  readonly authorizationNumber: string | undefined;
  readonly maker: string;
  readonly model: string;
  readonly productType: string;
  readonly serial: string | undefined;
  readonly jobNumber: string;
  readonly preparedOn: Day;
  readonly filing: ClaimFiling;
  /** Dates that are on file, in the order in which they happened to the unit. */
  readonly dates: readonly { readonly label: string; readonly on: Day }[];
}

export const sectionTitles = {
  coverage: "Coverage",
  story: "Complaint, cause, correction",
  readings: "Readings",
  money: "Parts and labour",
  photos: "Photos",
  documents: "Documents",
  history: "Earlier jobs on this unit",
  manifest: "Manifest",
} as const;
export type SectionKey = keyof typeof sectionTitles;

export interface PacketSection {
  readonly number: number;
  readonly key: SectionKey;
  readonly title: string;
  readonly entries: number;
}

/** As written by the technician; names of keys beside them. */
export interface PacketStory {
  readonly complaint: string;
  readonly cause: string;
  readonly correction: string;
  readonly symptom: string | undefined;
  readonly component: string | undefined;
  readonly failureMode: string | undefined;
  readonly causeName: string;
}

export interface PacketReading {
  readonly number: number;
  readonly check: string;
  readonly points: string;
  readonly mode: MeterMode;
  readonly outcome: ReadingOutcome;
  readonly power: PowerState;
  /** What was stated with it, such as "part disconnected". */
  readonly conditions: readonly string[];
  readonly range: PacketRange | undefined;
  readonly verdict: Judgement["kind"];
  readonly verdictWords: string;
  readonly cautions: readonly CautionKey[];
  /** As the meter's or the phone's clock said; undefined where nothing did. */
  readonly takenAt: string | undefined;
}

export interface PacketRange {
  readonly low: number | undefined;
  readonly high: number | undefined;
  readonly unit: string;
  readonly source: string;
  readonly mark: SourceMark;
}

export interface PacketFile {
  readonly id: string;
  readonly name: string;
  readonly subject: string;
  readonly caption: string;
  readonly mediaType: string;
  readonly bytes: number;
  readonly sha256: string;
  readonly takenAt: string | undefined;
}

export interface PacketEarlierJob {
  readonly jobNumber: string;
  readonly completedOn: Day;
  readonly component: string | undefined;
  readonly symptom: string | undefined;
  readonly causeName: string;
}

export interface ManifestEntry {
  readonly name: string;
  readonly bytes: number;
  readonly sha256: string;
}
