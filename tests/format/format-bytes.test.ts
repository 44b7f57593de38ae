import { expect, test } from "vitest";
import { formatBytes } from "@/lib/format/format-bytes";

test.each([
  [0, "0 bytes"],
  [812, "812 bytes"],
  [999, "999 bytes"],
  [1_000, "1 kB"],
  [999_400, "999 kB"],
  [999_500, "1 MB"],
  [1_440_000, "1.44 MB"],
  [2_147_483_648, "2.15 GB"],
  [5_000_000_000_000, "5,000 GB"],
])("%d bytes read as %s", (bytes, words) => {
  expect(formatBytes(bytes)).toBe(words);
});

test.each([-1, Number.NaN, Number.POSITIVE_INFINITY])("%d bytes are a caller's mistake", (bytes) => {
  expect(() => formatBytes(bytes)).toThrow(RangeError);
});
