import { afterEach, expect, test, vi } from "vitest";
import { sessionOfPage } from "@/app/_people/session-of-page";

afterEach(() => vi.unstubAllGlobals());

test.each([
  ["the same person", () => Response.json({ person: "me" }), "holds"],
  ["another person", () => Response.json({ person: "you" }), "somebody else"],
  ["nobody", () => new Response("{}", { status: 401 }), "over"],
  ["a server in trouble", () => new Response("", { status: 503 }), "no answer"],
  ["something else than the site", () => new Response("<p>proxy</p>", { status: 200 }), "no answer"],
  ["no line", () => Promise.reject(new TypeError("failed")), "no answer"],
] as const)("before a form is sent: %s", async (_, answer, found) => {
  vi.stubGlobal("fetch", async () => await answer());
  expect(await sessionOfPage("me")).toBe(found);
});
