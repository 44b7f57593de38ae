import { csvResponse } from "@/app/_http/csv-response";
import { mayCall } from "@/app/_people/may-call";
import { keptViews } from "../../kept-views";
import { lifeFiles } from "../life-files";

export const dynamic = "force-dynamic";

interface Context {
  readonly params: Promise<{ readonly component: string; readonly file: string }>;
}

/** What one drawing of the page shows, for the same address, as a file. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const caller = await mayCall(request, "GET /repeats/[component]/[file]");
  if (!caller.ok) return caller.response;
  const { component, file } = await params;
  const make = Object.hasOwn(lifeFiles, file) ? lifeFiles[file] : undefined;
  if (make === undefined)
    return new Response(`There is no such file. Choose from ${Object.keys(lifeFiles).join(", ")}.\n`, { status: 404 });
  const values = Object.fromEntries(new URL(request.url).searchParams);
  const view = await keptViews.life(component, values);
  if (view.kind === "unknown-component")
    return new Response("There is no such component in the catalogue.\n", { status: 404 });
  if (view.kind === "no-data") return csvResponse(`${component}-${file}`, ["no_data"], []);
  const { header, rows } = make(view.life);
  return csvResponse(`${component}-${file}`, header, rows);
}
