import { readFileSync } from "node:fs";
import { z } from "zod";

const manifest = z.object({
  node: z.record(
    z.string(),
    z.object({ exportedName: z.string(), filename: z.string(), workers: z.record(z.string(), z.unknown()) }),
  ),
});

export interface BuiltAction {
  readonly id: string;
  readonly name: string;
  /** One of the pages that it belongs to, as in the table of acts. */
  readonly page: string;
}

/** Every action of the built site, as the framework lists them for itself. */
export function builtActions(): readonly BuiltAction[] {
  const { node } = manifest.parse(JSON.parse(readFileSync(".next/server/server-reference-manifest.json", "utf8")));
  return Object.entries(node).map(([id, { exportedName, filename, workers }]) => ({
    id,
    name: `${filename} ${exportedName}`,
    page: pageOf(Object.keys(workers)),
  }));
}

/** "app/claims/[claim]/page" is /claims/[claim]; the first that is a page of ours. */
function pageOf(workers: readonly string[]): string {
  const page = workers.find((name) => !name.startsWith("app/_")) ?? "app/page";
  return page.replace(/^app/, "").replace(/\/page$/, "") || "/";
}

/** How a browser sends an action: a form as each of its arguments, filled with what hardly any action expects. */
export function callOf({ id }: BuiltAction): RequestInit {
  const body = new FormData();
  for (const name of ["number", "jobNumber", "claim", "name", "id"]) body.append(`_1_${name}`, "1");
  body.append("0", JSON.stringify(["$K1", "$K1", "$K1"]));
  return { method: "POST", headers: { "next-action": id, accept: "text/x-component" }, body, redirect: "manual" };
}
