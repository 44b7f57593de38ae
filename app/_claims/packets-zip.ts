import { Zip, ZipDeflate, ZipPassThrough } from "fflate";
import { claimFileName } from "@/lib/claims/claim-file-name";
import { canonicalJson } from "@/lib/claims/neutral/canonical-json";
import type { PacketFileParts } from "./load-packet-file";
import { mostPacketClaims } from "./most-packet-claims";
import { packetPdf } from "./packet-pdf";
import { paperAsked } from "./paper-of";

/** Far below what the archive's directory can name; what would go beyond is left for another download, and said. */
const mostBytes = 2_000_000_000;

interface Making {
  readonly load: (claimNumber: string) => Promise<PacketFileParts>;
  /** What the address asked for. */
  readonly paper: string | null;
  readonly onProgress: (done: number) => void;
}

/**
 * One PDF for each claim, since payers take a file a claim, and all of them once more as JSON Lines for programs.
 * Made one by one as the reader takes them, so that memory holds one packet however many there are. A claim without a
 * packet does not stop the others: it is named with its reason in a text file.
 */
export function packetsZip(claimNumbers: readonly string[], making: Making): ReadableStream<Uint8Array> {
  if (claimNumbers.length > mostPacketClaims) throw new RangeError(`claimNumbers: at most ${mostPacketClaims}`);
  const pieces = piecesOf(claimNumbers, making);
  return new ReadableStream<Uint8Array>({
    async pull(controller) {
      const { value, done } = await pieces.next();
      if (done === true) controller.close();
      else controller.enqueue(value);
    },
    async cancel() {
      await pieces.return(undefined);
    },
  });
}

async function* piecesOf(claimNumbers: readonly string[], making: Making): AsyncGenerator<Uint8Array, undefined> {
  const made: Uint8Array[] = [];
  const zip = new Zip((error, piece) => {
    if (error !== null) throw error;
    made.push(piece);
  });
  const lines: string[] = [];
  const leftOut: string[] = [];
  let bytes = 0;
  for (const [index, number] of claimNumbers.entries()) {
    const parts = bytes > mostBytes ? tooMuch(number) : await making.load(number);
    if (parts.kind === "none") leftOut.push(parts.sentence);
    else {
      lines.push(canonicalJson(parts.neutral));
      await addPdf(zip, number, parts, making.paper);
    }
    making.onProgress(index + 1);
    for (const piece of made.splice(0)) {
      bytes += piece.length;
      yield piece;
    }
  }
  addText(zip, "claims.jsonl", lines);
  if (leftOut.length > 0) addText(zip, "not-included.txt", leftOut);
  zip.end();
  yield* made;
  return undefined;
}

type Packet = Extract<PacketFileParts, { readonly kind: "packet" }>;

async function addPdf(zip: Zip, claimNumber: string, parts: Packet, paper: string | null): Promise<void> {
  const { packet, photos } = parts;
  const createdAt = new Date(`${packet.cover.preparedOn}T00:00:00Z`);
  const pdf = await packetPdf(packet, photos, { paper: paperAsked(paper, parts.paper), createdAt });
  // Pictures and text of a PDF are packed already.
  const file = new ZipPassThrough(`${claimFileName(claimNumber)}.pdf`);
  zip.add(file);
  file.push(pdf, true);
}

function addText(zip: Zip, name: string, lines: readonly string[]): void {
  const file = new ZipDeflate(name);
  zip.add(file);
  file.push(Buffer.from(lines.map((line) => `${line}\n`).join("")), true);
}

function tooMuch(claimNumber: string): PacketFileParts {
  const sentence = `Claim ${claimNumber} did not fit: a download ends near ${mostBytes / 1_000_000_000} GB. Download it with the next ones.`;
  return { kind: "none", sentence };
}
