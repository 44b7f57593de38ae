import type { Day } from "@/lib/calendar/day";
import type { Currency } from "@/lib/domain/money";
import { canonicalJson } from "../neutral/canonical-json";
import type { NeutralClaim } from "../neutral/neutral-claim-document";
import type { ClaimPacket } from "../packet";
import type { AskedClaimLine } from "./asked-lines";

/**
 * What leaves with one filing: the claim for other programs, the packet that people read, and what is asked line by
 * line. The two say the same in two ways: a program holds the first to its schema, and the page that was sent is drawn
 * from the second, as it was, however drawing changes later.
 */
export interface SentContent {
  readonly schema: typeof sentSchema | typeof firstSentSchema;
  readonly claimNumber: string;
  /** 1 for the first filing. */
  readonly filing: number;
  readonly sentOn: Day;
  readonly currency: Currency;
  readonly askedCents: number;
  readonly lines: readonly AskedClaimLine[];
  /** By /claims/claim-schema.json; undefined in what was sent before it was kept. */
  readonly claim: NeutralClaim | undefined;
  readonly packet: ClaimPacket;
}

const sentSchema = "ohmsworth/sent-claim/2";
/** Without the claim for other programs; no longer written, and always read. */
const firstSentSchema = "ohmsworth/sent-claim/1";

export type SendingContent = SentContent & { readonly claim: NeutralClaim };

export function sentContent(given: Omit<SendingContent, "schema" | "askedCents">): SendingContent {
  const { claimNumber, filing, sentOn, currency, lines, claim, packet } = given;
  const askedCents = lines.reduce((sum, { cents }) => sum + cents, 0);
  return { schema: sentSchema, claimNumber, filing, sentOn, currency, askedCents, lines, claim, packet };
}

/** The bytes that are hashed, kept and handed out again: RFC 8785, so that equal content has equal bytes. */
export function sentText(content: SendingContent): string {
  return canonicalJson(JSON.parse(JSON.stringify(content))); // a field that is undefined is no field in JSON
}

/** @throws RangeError where the text is none of ours */
export function readSentText(text: string): SentContent {
  const read = JSON.parse(text) as SentContent; // only ever written by `sentText`, and held to its hash since
  if (read.schema !== sentSchema && read.schema !== firstSentSchema)
    throw new RangeError(`text: neither ${sentSchema} nor ${firstSentSchema} but ${String(read.schema)}`);
  return { ...read, claim: read.claim };
}
