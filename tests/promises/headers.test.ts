import { expect, test } from "vitest";
import config from "@/next.config";

const headersOf = async (source: string): Promise<ReadonlyMap<string, string>> => {
  const groups = (await config.headers?.()) ?? [];
  const found = groups.find((group) => group.source === source)?.headers ?? [];
  return new Map(found.map(({ key, value }) => [key.toLowerCase(), value]));
};

test("every answer asks for encryption for at least a year, is taken for what it says, and tells others nothing of its address", async () => {
  const headers = await headersOf("/:path*");
  const age = Number(/max-age=(\d+)/.exec(headers.get("strict-transport-security") ?? "")?.[1]);
  expect(age).toBeGreaterThanOrEqual(365 * 86_400);
  expect(headers.get("x-content-type-options")).toBe("nosniff");
  expect(headers.get("referrer-policy")).toBe("same-origin");
  expect(config.poweredByHeader).toBe(false);
});
