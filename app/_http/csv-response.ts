import { type CsvCell, csvText } from "@/lib/format/csv-text";

/** A table as a file to keep: what a page shows, all rows of it. @param status 404 where the page itself would not be found */
export function csvResponse(
  fileName: string,
  header: readonly string[],
  rows: readonly (readonly CsvCell[])[],
  status = 200,
): Response {
  return new Response(csvText(header, rows), {
    status,
    headers: {
      "Content-Type": "text/csv; charset=utf-8",
      "Content-Disposition": `attachment; filename="${fileName}"`,
      "Cache-Control": "no-store",
    },
  });
}
