import type { Day } from "@/lib/calendar/day";
import type { Currency } from "@/lib/domain/money";
import type { ClaimPacket } from "../packet";
import type { AskedClaimLine } from "./asked-lines";

/** What leaves with one filing: the whole packet as data, with what is asked line by line. Kept as its bytes. */
export interface SentContent {
  readonly schema: typeof sentSchema;
  readonly claimNumber: string;
  /** 1 for the first filing. */
  readonly filing: number;
  readonly sentOn: Day;
  readonly currency: Currency;
  readonly askedCents: number;
  readonly lines: readonly AskedClaimLine[];
  readonly packet: ClaimPacket;
}

const sentSchema = "ohmsworth/sent-claim/1";

export function sentContent(given: Omit<SentContent, "schema" | "askedCents">): SentContent {
  const { claimNumber, filing, sentOn, currency, lines, packet } = given;
  const askedCents = lines.reduce((sum, { cents }) => sum + cents, 0);
  return { schema: sentSchema, claimNumber, filing, sentOn, currency, askedCents, lines, packet };
}

/** The bytes that are hashed, kept and handed out again: indented, so that people can read them too. */
export function sentText(content: SentContent): string {
  return `${JSON.stringify(content, undefined, 1)}\n`;
}

/** @throws RangeError where the text is none of ours */
export function readSentText(text: string): SentContent {
  const read = JSON.parse(text) as SentContent; // only ever written by `sentText`, and held to its hash since
  if (read.schema !== sentSchema) throw new RangeError(`text: not ${sentSchema} but ${String(read.schema)}`);
  return read;
}
