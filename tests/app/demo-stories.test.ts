// The invented company is told claim by claim while it is loaded: a story that some claim cannot carry would end the first start.
import { expect, test } from "vitest";
import { contractStories, demoStories } from "@/app/commands/demo-claims/stories";
import { addDays, day } from "@/lib/calendar/day";
import type { AskedLine, ClaimAct } from "@/lib/claims/life/claim-act";
import { claimStanding } from "@/lib/claims/life/claim-standing";
import { judgeAct } from "@/lib/claims/life/judge-act";

const completedOn = day("2026-03-02");

const claims: Readonly<Record<string, readonly AskedLine[]>> = {
  "parts and labour": [
    { line: 1, item: "parts", cents: 12_000 },
    { line: 2, item: "labour", cents: 9_000 },
  ],
  "parts alone": [{ line: 1, item: "parts", cents: 7_926 }],
  "cheap labour": [{ line: 1, item: "labour", cents: 3_000 }],
};

test.each(
  [...demoStories, ...contractStories].flatMap((story, index) =>
    Object.keys(claims).map((claim) => [index, claim, story] as const),
  ),
)("story %i can be told of a claim for %s", (_, claim, { steps }) => {
  const events: { number: number; act: ClaimAct }[] = [{ number: 1, act: { what: "built" } }];
  for (const { after, act } of steps) {
    const on = addDays(completedOn, after);
    const next: ClaimAct =
      act === "send"
        ? { what: "sent", on, sha256: "a".repeat(64), lines: claims[claim] ?? [] }
        : act(claimStanding(events), on);
    expect(judgeAct(events, next)).toBeUndefined();
    events.push({ number: events.length + 1, act: next });
  }
});
