import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { expect, test } from "vitest";
import { PacketPage } from "@/app/_claims/packet-page";
import { assembleClaim } from "@/lib/claims/assemble-claim";
import { claimPacket } from "@/lib/claims/claim-packet";
import { claimCase, pumpRecord } from "./claim-case";

function pageOf(photos: boolean): { readonly html: string; readonly packet: ReturnType<typeof claimPacket> } {
  const record = pumpRecord();
  const given = claimCase(photos ? record : { ...record, attachments: [] });
  const assembly = assembleClaim(given);
  if (assembly.kind === "blocked") throw new Error("the made record is claimable");
  const packet = claimPacket(given, assembly.claim, [], { claimNumber: "C-2025-0001", servicer: "Servicer" });
  const html = renderToStaticMarkup(createElement(PacketPage, { packet, photoHref: (id: string) => `/photos/${id}` }));
  return { html, packet };
}

test("the page holds every section under its line, every photo and every hash", () => {
  const { html, packet } = pageOf(true);
  for (const { number, title } of packet.index) {
    expect(html).toContain(`Claim C-2025-0001 · serial HW2100001 · section ${number} of 8`);
    expect(html).toContain(`>${title}</h2>`);
  }
  expect(packet.photos.length).toBeGreaterThan(0);
  for (const { id, sha256 } of packet.photos) {
    expect(html).toContain(`src="/photos/${id}"`);
    expect(html).toContain(sha256);
  }
  expect(html).toContain("qualified persons only");
});

test("what is missing is said on the page", () => {
  const { html, packet } = pageOf(false);
  expect(packet.notSupplied.length).toBeGreaterThan(0);
  const shown = html.replaceAll("&#x27;", "'").replaceAll("&quot;", '"');
  expect(packet.notSupplied.filter((line) => !shown.includes(line))).toEqual([]);
});
