import { normalised } from "@/lib/domain/normalised";
import { type JobRow, parseJobRow } from "@/lib/intake/parse-job-row";
import { firstJobs } from "../bulk/first-jobs";
import { noteUsedRows } from "../bulk/made-rows";
import { joinStagedJobs } from "../joining/join-staged-jobs";
import { type ReadColumn, stagedKind } from "../staging/staged-kind";
import { fillUnitBlanks } from "./fill-unit-blanks";
import { checkJobs, resolveJobs } from "./job-checks";
import { jobKey, unitKey } from "./job-keys";
import { unstatedModel } from "./models-of-rows";
import { noteUnitFacts } from "./note-unit-facts";
import { storedUnderJob } from "./rows-of-jobs";
import { storeUnitsOfJobs } from "./units-of-jobs";
import { noteWords } from "./words-in-use";

const value = (
  name: string,
  type: string,
  read: (row: JobRow) => StagedColumnValue,
  from = name,
): ReadColumn<JobRow> => ({
  name,
  type,
  from,
  use: "value",
  value: read,
});
type StagedColumnValue = string | number | undefined;

const help = (name: string, from: string, read: (row: JobRow) => string | undefined): ReadColumn<JobRow> => ({
  name,
  type: "text",
  from,
  use: "help",
  value: read,
});

/** What a job's row says of its unit. */
const fact = (name: string, from: string, read: (row: JobRow) => string | undefined): ReadColumn<JobRow> => ({
  ...help(name, from, read),
  type: "date",
});

/** Closed jobs. A serial that no register names makes a unit that is known but carries no exposure. */
export const jobsKind = stagedKind<JobRow>({
  kind: "jobs",
  parse: parseJobRow,
  columns: [
    help("maker", "maker", (row) => row.maker),
    help("maker_n", "maker", (row) => normalised(row.maker)),
    help("model", "model", (row) => row.model ?? unstatedModel),
    help("model_n", "model", (row) => (row.model === undefined ? `~${row.productType ?? ""}` : normalised(row.model))),
    help("product_type", "product_type", (row) => row.productType),
    help("serial", "serial", (row) => row.serial),
    help("serial_normalised", "serial", (row) => (row.serial === undefined ? undefined : normalised(row.serial))),
    fact("made_from", "made", ({ unitFacts }) => unitFacts.madeFrom),
    fact("made_until", "made", ({ unitFacts }) => unitFacts.madeUntil),
    fact("sold_on", "sold_on", ({ unitFacts }) => unitFacts.soldOn),
    fact("delivered_on", "delivered_on", ({ unitFacts }) => unitFacts.deliveredOn),
    fact("installed_on", "installed_on", ({ unitFacts }) => unitFacts.installedOn),
    { ...help("job_number", "job_number", (row) => row.job.jobNumber), use: "once" },
    value("status", "text", ({ job }) => job.status),
    value("requested_on", "date", ({ job }) => job.requestedOn),
    value("first_visit_on", "date", ({ job }) => job.firstVisitOn),
    value("diagnosed_on", "date", ({ job }) => job.diagnosedOn),
    value("parts_ordered_on", "date", ({ job }) => job.partsOrderedOn),
    value("parts_received_on", "date", ({ job }) => job.partsReceivedOn),
    value("completed_on", "date", ({ job }) => job.completedOn),
    value("invoiced_on", "date", ({ job }) => job.invoicedOn),
    value("complaint", "text", ({ job }) => job.complaint),
    value("cause_note", "text", ({ job }) => job.causeNote),
    value("correction", "text", ({ job }) => job.correction),
    value("symptom", "text", ({ job }) => job.symptom),
    value("component", "text", ({ job }) => job.component),
    value("failure_mode", "text", ({ job }) => job.failureMode),
    value("cause", "text", ({ job }) => job.cause),
    value("visits", "integer", ({ job }) => job.visits),
    value("technician", "text", ({ job }) => job.technician),
    value("payer", "text", ({ job }) => job.payer),
    value("labour_minutes", "integer", ({ job }) => job.labourMinutes),
    value("labour_cents", "bigint", ({ job }) => job.labour?.cents, "labour"),
    value("trip_cents", "bigint", ({ job }) => job.trip?.cents, "trip"),
    value("trip_miles", "integer", ({ job }) => job.tripMiles),
    value("currency", "text", (row) => row.currency),
    value("authorization_number", "text", ({ job }) => job.authorizationNumber),
    value("authorized_on", "date", ({ job }) => job.authorizedOn),
    value("callback_of", "text", ({ job }) => job.callbackOf),
  ],
  derived: [
    jobKey,
    unitKey("given_unit_id"),
    "unit_id bigint",
    "unit_known boolean",
    "kind_of_model text",
    "joins_from bigint",
  ],
  target: {
    table: "jobs",
    key: ["unit_id", "job_id"],
    storedKey: storedUnderJob,
    onInsert: {},
    alsoDiffers: "s.joins_from is not null",
    notRestored: ["failed_on", "counted_as"],
  },
  named: { column: "job_number", noun: "job" },
  first: firstJobs,
  resolve: resolveJobs,
  check: checkJobs,
  async prepare(tx, staged, batchId) {
    await storeUnitsOfJobs(tx, staged, batchId);
    await joinStagedJobs(tx, staged, batchId);
  },
  async finish(tx, staged, batchId) {
    const units = `select unit_id, min(row) as row from ${staged.table} where fate is not null and unit_known group by unit_id`; // its own hang together anyway
    await fillUnitBlanks(tx, staged, batchId);
    await noteUnitFacts(tx, staged, batchId);
    await noteUsedRows(tx, { table: "units", key: ["unit_id"], from: units, batchId });
    await noteWords(tx, {
      rows: `select distinct component, kind_of_model from ${staged.table} where fate is not null and component is not null`,
      batchId,
    });
  },
  recounts: "staged units",
});
