import { describe, expect, test } from "vitest";
import { day } from "@/lib/calendar/day";
import { matchRemittance } from "@/lib/claims/remittance/match-remittance";
import type { AwaitedClaim, RemittanceLine } from "@/lib/claims/remittance/remittance-line";
import { shareOut, splitPayment } from "@/lib/claims/remittance/split-payment";
import { seeded } from "../../calendar/seeded";

// How payers name a claim (by our number, by their own, by the job, or only by the serial) and that one credit may stand
// for many claims: common practice, no source.

const first = claim({ claimNumber: "C-2026-0001", jobNumber: "J-501", serial: "8B0 114" });
const second = claim({ claimNumber: "C-2026-0002", jobNumber: "J-502", serial: "9C2 207", payerReference: "PX-88" });

describe("by reference", () => {
  test.each([
    ["our number, whatever its punctuation", "c 2026 0001 / net", "claim number", "C-2026-0001"],
    ["the payer's own", "px88", "payer's reference", "C-2026-0002"],
    ["the job's", "J-502", "job number", "C-2026-0002"],
  ])("%s", (_name, reference, by, claimNumber) => {
    const [match] = matchRemittance(
      [line({ references: [reference.replaceAll(" ", "-").replace("-/-", " / ")] })],
      both(),
    );
    expect(match).toMatchObject({ kind: "matched", confidence: "sure", by, shares: [{ claimNumber }] });
  });

  test("one credit for two claims is posted only where it is just what they ask", () => {
    const references = ["C-2026-0001, C-2026-0002"];
    const [whole, part] = matchRemittance(
      [line({ references, paidCents: 29_000 }), line({ references, paidCents: 28_999 })],
      both(),
    );
    expect(whole).toMatchObject({ kind: "matched", shares: [{ split: "pays in full" }, { split: "pays in full" }] });
    expect(part).toMatchObject({ kind: "unmatched", candidates: ["C-2026-0001", "C-2026-0002"] });
  });

  test("an item that was not asked for, another currency, and a second payment wait for a person", () => {
    const references = ["C-2026-0001"];
    const paidAlready = claim({
      ...first,
      lines: first.lines.map((each) => ({ ...each, paidCents: each.askedCents })),
    });
    expect(matchRemittance([line({ references, item: "trip" })], both())[0]).toMatchObject({ kind: "unmatched" });
    expect(matchRemittance([line({ references, currency: "CAD" })], both())[0]).toMatchObject({ kind: "unmatched" });
    expect(matchRemittance([line({ references })], [paidAlready])[0]).toMatchObject({
      reason: expect.stringContaining("paid twice"),
    });
  });

  test("money taken back is shared over what was paid", () => {
    const paid = claim({ ...first, lines: first.lines.map((each) => ({ ...each, paidCents: each.askedCents })) });
    const [match] = matchRemittance([line({ references: ["C-2026-0001"], paidCents: -14_500 })], [paid]);
    expect(match).toMatchObject({
      shares: [
        {
          lines: [
            { line: 1, cents: 8_000 },
            { line: 2, cents: 6_500 },
          ],
        },
      ],
    });
  });
});

describe("by serial", () => {
  test("with the day and the whole amount it is likely, and waits for a yes", () => {
    const [match] = matchRemittance([line({ serial: "8b0114", completedOn: day("2026-02-12") })], both());
    expect(match).toMatchObject({ kind: "matched", confidence: "likely", by: "serial, day and amount" });
  });

  test("two claims of one serial with the same amount are never chosen between", () => {
    const twin = claim({ ...second, serial: "8B0 114" });
    expect(matchRemittance([line({ serial: "8B0 114" })], [first, twin])[0]).toMatchObject({
      kind: "unmatched",
      candidates: ["C-2026-0001", "C-2026-0002"],
    });
  });

  test("a serial of nobody and a line without any name stay in the tray", () => {
    const found = matchRemittance([line({ serial: "ZZZ" }), line({})], both());
    expect(found.map(({ kind }) => kind)).toEqual(["unmatched", "unmatched"]);
  });
});

describe("split of a sum", () => {
  test("no cent is lost or made, whatever the sum", () => {
    const random = seeded(11);
    for (let round = 0; round < 2_000; round++) {
      const weights = Array.from({ length: 1 + random(5) }, () => random(20_000));
      if (!weights.some((weight) => weight > 0)) continue;
      const sum = random(100_000);
      const parts = shareOut(sum, weights);
      expect(parts.reduce((all, part) => all + part, 0)).toBe(sum);
      for (const [index, part] of parts.entries())
        expect(Math.abs(part - (sum * (weights[index] ?? 0)) / weights.reduce((a, b) => a + b, 0))).toBeLessThan(1);
    }
    expect(() => shareOut(5, [0, 0])).toThrow("weights");
  });

  test("a stated item takes it whole; a short sum is shared by what was asked, and says so", () => {
    expect(splitPayment({ item: "labour", paidCents: 6_000 }, first.lines)).toEqual({
      lines: [{ line: 2, cents: 6_000 }],
      split: "as stated",
    });
    expect(splitPayment({ item: undefined, paidCents: 1_450 }, first.lines)).toEqual({
      lines: [
        { line: 1, cents: 800 },
        { line: 2, cents: 650 },
      ],
      split: "by what was asked",
    });
  });
});

function both(): AwaitedClaim[] {
  return [first, second];
}

function claim(over: Partial<AwaitedClaim>): AwaitedClaim {
  const money = { approvedCents: undefined, paidCents: 0, clawedBackCents: 0 };
  return {
    claimNumber: "C-2026-0009",
    jobNumber: "J-509",
    payerReference: undefined,
    serial: undefined,
    completedOn: day("2026-02-10"),
    currency: "USD",
    lines: [
      { line: 1, item: "parts", askedCents: 8_000, ...money },
      { line: 2, item: "labour", askedCents: 6_500, ...money },
    ],
    ...over,
  };
}

function line(over: Partial<RemittanceLine>): RemittanceLine {
  return {
    row: 2,
    references: [],
    serial: undefined,
    completedOn: undefined,
    item: undefined,
    paidCents: 14_500,
    currency: "USD",
    payerText: "",
    ...over,
  };
}
