import type { StoredAnswer } from "@/db/writes/answer-once";
import type { LoadResult } from "@/db/writes/load-result";
import type { JobRecord, PointedProblem } from "@/lib/intake/records/read-job-records";
import { refusedRows } from "./problems";

/** What the sender is told of a load: where it stands, or each place that has to be corrected. */
export function answerOf(result: LoadResult, records: readonly JobRecord[]): StoredAnswer {
  switch (result.kind) {
    case "added": {
      const { rowsTotal, rowsNew, rowsChanged, rowsSame } = result.report;
      const changes = rowsNew + rowsChanged > 0;
      return {
        status: changes ? 201 : 200,
        body: {
          load: result.batchId,
          address: `/files/${result.batchId}`,
          rows: { total: rowsTotal, new: rowsNew, changed: rowsChanged, same: rowsSame },
        },
      };
    }
    case "loaded before":
      return {
        status: 200,
        body: {
          load: result.batchId,
          address: `/files/${result.batchId}`,
          rows: { total: records.length, new: 0, changed: 0, same: records.length },
        },
      };
    case "refused":
    case "checked":
      return { status: 422, body: refusedRows(result.report.problems.map((problem) => pointed(problem, records))) };
    case "unreadable":
      return {
        status: 422,
        body: refusedRows(result.problems.map(({ problem, fix }) => ({ pointer: "", value: "", problem, fix }))),
      };
  }
}

type Placed = (LoadResult & { kind: "refused" })["report"]["problems"][number];

/** Problems name a record by its number and a column by its kind; the sender knows both by their place in the document. */
function pointed({ row, column, value, problem, fix }: Placed, records: readonly JobRecord[]): PointedProblem {
  const place = records[row - 1]?.pointer ?? "";
  const name = column.split(".").at(-1) ?? "";
  return { pointer: name === "" ? place : `${place}/${name}`, value, problem, fix };
}
