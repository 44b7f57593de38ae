import { createHash } from "node:crypto";
import { expect, test } from "vitest";
import { secretProblem } from "@/lib/people/secret-strength";

test("a thousand drawn secrets are strong enough", () => {
  const drawn = Array.from({ length: 1000 }, (_, i) => createHash("sha256").update(String(i)).digest("base64url"));
  expect(drawn.filter((secret) => secretProblem(secret) !== undefined)).toEqual([]);
});

test.each(["", "secret", "change-me", "0".repeat(64), "abcd".repeat(20), "x".repeat(31)])(
  "%j is too weak, and it says why",
  (secret) => {
    expect(secretProblem(secret)).toMatch(/characters/);
  },
);
