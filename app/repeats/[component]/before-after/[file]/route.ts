import { comparisonResponse } from "../../comparison-response";

export const dynamic = "force-dynamic";

interface Context {
  readonly params: Promise<{ readonly component: string; readonly file: string }>;
}

export async function GET(request: Request, { params }: Context): Promise<Response> {
  return comparisonResponse(request, "before-after", await params);
}
