import { afterEach, expect, test, vi } from "vitest";
import { onRequestError } from "@/instrumentation";

afterEach(() => {
  vi.unstubAllEnvs();
  vi.restoreAllMocks();
});

const context = {
  routerKind: "App Router",
  routePath: "/jobs/[number]",
  renderSource: "react-server-components",
  revalidateReason: undefined,
} as const;
const request = { path: "/jobs/J-10004?words=Miller", method: "GET", headers: { cookie: "ohmsworth-session=secret" } };

test.each(["render", "action"] as const)(
  "what a page or an action threw (%s) is one line in the log under the code that is shown, without what was asked for",
  async (routeType) => {
    vi.stubEnv("NEXT_RUNTIME", "nodejs");
    const write = vi.spyOn(process.stderr, "write").mockReturnValue(true);
    const error = Object.assign(new Error("select secret from jobs where words = Miller"), { digest: "1234567890" });
    await onRequestError(error, request, { ...context, routeType });
    const lines = write.mock.calls.map(([line]) => String(line));
    expect(lines).toHaveLength(1);
    expect(JSON.parse(lines[0] ?? "")).toEqual({
      at: expect.any(String),
      level: "error",
      what: "failure",
      method: "GET",
      place: "/jobs/*",
      kind: routeType,
      failure: "1234567890",
    });
  },
);
