import { mayCall } from "@/app/_people/may-call";
import { comparisonResponse } from "../../comparison-response";

export const dynamic = "force-dynamic";

interface Context {
  readonly params: Promise<{ readonly component: string; readonly file: string }>;
}

export async function GET(request: Request, { params }: Context): Promise<Response> {
  const caller = await mayCall(request, "GET /repeats/[component]/before-after/[file]");
  if (!caller.ok) return caller.response;
  return comparisonResponse(request, "before-after", await params);
}
