import { csvResponse } from "@/app/_http/csv-response";
import { problem } from "@/app/_http/problem";
import { loadFile } from "@/db/writes/load-file";
import { findUpload } from "../../../uploads";

export const dynamic = "force-dynamic";

interface Context {
  readonly params: Promise<{ readonly id: string }>;
}

/** Every problem of a waiting file, a row each. */
export async function GET(_request: Request, { params }: Context): Promise<Response> {
  const upload = await findUpload((await params).id);
  if (upload === undefined) return problem(404, "Not found", "This file is no longer waiting. Choose it again.");
  const result = await loadFile({
    path: upload.path,
    fileName: upload.fileName,
    mode: "dry run",
    problemLimit: 1_000_000,
  });
  const problems = "report" in result ? result.report.problems : [];
  return csvResponse(
    "problems.csv",
    ["row", "column", "value", "problem", "what_to_do"],
    problems.map((row) => [row.row, row.column, row.value, row.problem, row.fix]),
  );
}
