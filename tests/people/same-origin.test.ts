import { expect, test } from "vitest";
import { safeWay } from "@/app/_people/safe-way";
import { comesFromThisSite } from "@/app/_people/same-origin";

const from = (headers: Record<string, string>) =>
  comesFromThisSite(new Headers({ host: "claims.shop.example", ...headers }));

test("a page of this site may change something, also behind a proxy that names the host", () => {
  expect(from({ origin: "https://claims.shop.example" })).toBe(true);
  expect(from({ origin: "https://claims.shop.example", "sec-fetch-site": "same-origin" })).toBe(true);
  const proxied = { host: "127.0.0.1:3000", "x-forwarded-host": "claims.shop.example" };
  expect(from({ ...proxied, origin: "https://claims.shop.example" })).toBe(true);
});

test.each([
  ["no Origin", {}],
  ["another site's page", { origin: "https://elsewhere.example" }],
  ["a page in a sandbox", { origin: "null" }],
  ["a neighbour of the same domain", { origin: "https://shop.example" }],
  ["another port of the host", { origin: "https://claims.shop.example:8443" }],
  [
    "what the browser itself calls cross-site",
    { origin: "https://claims.shop.example", "sec-fetch-site": "cross-site" },
  ],
  ["what the browser calls same-site", { origin: "https://claims.shop.example", "sec-fetch-site": "same-site" }],
  ["a name that only begins like ours", { origin: "https://claims.shop.example.elsewhere.example" }],
] as const)("%s may not", (_, headers) => {
  expect(from({ ...headers })).toBe(false);
});

test.each([
  ["/claims?state=draft#due", "/claims?state=draft#due"],
  ["//elsewhere.example/x", "/today"],
  ["/\\elsewhere.example", "/today"],
  ["https://elsewhere.example", "/today"],
  ["javascript:alert(1)", "/today"],
  ["/sign-in?to=/sign-in", "/today"],
  ["/a\n/b", "/today"],
  ["", "/today"],
  [undefined, "/today"],
])("after signing in %j leads to %s", (to, way) => {
  expect(safeWay(to)).toBe(way);
});
