import { csvResponse } from "@/app/_http/csv-response";
import { keptViews } from "../kept-views";
import type { ComparisonKind } from "../load-comparison";
import { comparisonFiles } from "./comparison-files";

/** What one drawing of a comparison shows, for the same address, as a file. */
export async function comparisonResponse(
  request: Request,
  kind: ComparisonKind,
  { component, file }: { readonly component: string; readonly file: string },
): Promise<Response> {
  const make = Object.hasOwn(comparisonFiles, file) ? comparisonFiles[file] : undefined;
  if (make === undefined)
    return new Response(`There is no such file. Choose from ${Object.keys(comparisonFiles).join(", ")}.\n`, {
      status: 404,
    });
  const values = Object.fromEntries(new URL(request.url).searchParams);
  const view = await keptViews.comparison(kind, component, values);
  if (view.kind === "unknown-component")
    return new Response("There is no such component in the catalogue.\n", { status: 404 });
  const name = `${component}-${kind}-${file}`;
  if (view.kind === "no-data" || view.outcome.kind !== "compared") return csvResponse(name, ["nothing_to_compare"], []);
  const { header, rows } = make(view.outcome.comparison);
  return csvResponse(name, header, rows);
}
