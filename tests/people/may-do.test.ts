import { expect, test, vi } from "vitest";
import { mayDo } from "@/app/_people/may-do";

process.env.__NEXT_EXPERIMENTAL_AUTH_INTERRUPTS = "true"; // as next.config.ts asks for it
let requested: Record<string, string> = {};
vi.mock("next/headers", () => ({ headers: async () => new Headers(requested) }));
vi.mock("@/app/_people/signed-in", () => ({
  signedIn: async () => ({ id: "1", name: "Kim", role: "manager", technician: undefined, hasSecondFactor: true }),
}));

const host = "claims.shop.example";

// The framework itself lets an action through that comes without an Origin, with a warning.
test.each([
  ["no Origin", { host }],
  ["another site's", { host, origin: "https://elsewhere.example" }],
  ["what the browser calls cross-site", { host, origin: `https://${host}`, "sec-fetch-site": "cross-site" }],
])("an action with %s is forbidden, whoever is signed in", async (_, headers) => {
  requested = headers;
  await expect(mayDo("jobs.change")).rejects.toMatchObject({ digest: "NEXT_HTTP_ERROR_FALLBACK;403" });
});

test("an action from the site's own page is done by who is signed in", async () => {
  requested = { host, origin: `https://${host}`, "sec-fetch-site": "same-origin" };
  expect(await mayDo("jobs.change")).toMatchObject({ name: "Kim" });
});
