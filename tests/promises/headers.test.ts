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

test("pages load nothing from elsewhere, hold no plug-in, stand in no frame, and send forms nowhere else; what people upload may do nothing", async () => {
  const policyOf = async (source: string) =>
    new Map(
      ((await headersOf(source)).get("content-security-policy") ?? "").split(";").map((rule) => {
        const [name = "", ...values] = rule.trim().split(" ");
        return [name, values.join(" ")];
      }),
    );
  const policy = await policyOf("/:path*");
  expect(policy.get("default-src")).toBe("'self'");
  for (const none of ["object-src", "base-uri", "frame-ancestors"]) expect(policy.get(none)).toBe("'none'");
  expect(policy.get("form-action")).toBe("'self'");
  expect(policy.get("connect-src")).toMatch(/^'self'/);
  expect([...policy.values()].join(" ")).not.toMatch(/https?:|\*/);
  expect(await policyOf("/jobs/:number/photos/:id")).toEqual(
    new Map([
      ["default-src", "'none'"],
      ["sandbox", ""],
    ]),
  );
});
