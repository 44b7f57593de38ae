// What was sent is kept as text and read for years: a later program must read what an earlier one wrote.
import { expect, test } from "vitest";
import { day } from "@/lib/calendar/day";
import { assembleClaim } from "@/lib/claims/assemble-claim";
import { claimPacket } from "@/lib/claims/claim-packet";
import { askedLines } from "@/lib/claims/life/asked-lines";
import { changedSinceSent } from "@/lib/claims/life/changed-since-sent";
import { readSentText, sentContent, sentText } from "@/lib/claims/life/sent-content";
import { canonicalJson } from "@/lib/claims/neutral/canonical-json";
import { neutralClaim } from "@/lib/claims/neutral/neutral-claim";
import { neutralClaimDocument } from "@/lib/claims/neutral/neutral-claim-document";
import { claimCase, pumpRecord } from "../claim-case";

function sending() {
  const given = claimCase(pumpRecord());
  const assembly = assembleClaim(given);
  if (assembly.kind === "blocked") throw new Error("the sample claim is blocked");
  const { claim } = assembly;
  const packet = claimPacket(given, claim, [], { claimNumber: "C-1", servicer: "Shop", timeZone: "UTC" });
  return sentContent({
    claimNumber: "C-1",
    filing: 1,
    sentOn: day("2025-03-20"),
    currency: claim.currency,
    lines: askedLines(claim),
    claim: neutralClaim({ given, claim, packet }),
    packet,
  });
}

test("the text is its own canonical form, and the claim in it is one by the published schema", () => {
  const text = sentText(sending());
  expect(canonicalJson(JSON.parse(text))).toBe(text);
  const { claim, askedCents } = readSentText(text);
  expect(neutralClaimDocument.parse(claim).money.total.cents).toBe(askedCents);
});

test("a packet that comes back from its text is no changed packet", () => {
  const content = sending();
  const { packet } = readSentText(sentText(content));
  expect(changedSinceSent(packet, content.packet)).toEqual([]);
  const now = { ...content.packet, story: { ...content.packet.story, cause: "Something else." } };
  expect(changedSinceSent(packet, now)).toEqual(["Complaint, cause or correction"]);
});

test("what was kept before the claim for other programs was is still read", () => {
  const { claim: _, ...rest } = sending();
  const first = `${JSON.stringify({ ...rest, schema: "ohmsworth/sent-claim/1" }, undefined, 1)}\n`;
  const read = readSentText(first);
  expect(read.claim).toBeUndefined();
  expect(changedSinceSent(read.packet, rest.packet)).toEqual([]);
});

test("other text is refused", () => {
  expect(() => readSentText('{"schema":"ohmsworth/claim/1"}')).toThrow(RangeError);
});
