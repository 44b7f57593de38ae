const hash = (text: string) => `hashtextextended(${text}, 0)`;
const positive = "& 9223372036854775807";

/** Staging column for the key of the job whose number a row gives. */
export const jobKey = `job_id bigint generated always as (${hash("job_number")} ${positive}) stored`;

/** Staging column of this name for the key of the unit that a job's row names, or of one of its own where it names none. */
export const unitKey = (
  name: "unit_id" | "given_unit_id",
) => `${name} bigint generated always as (case when serial_normalised is not null
       then ${hash("maker_n || '|' || serial_normalised")} else ${hash("'job|' || job_number")} end ${positive}) stored`;
