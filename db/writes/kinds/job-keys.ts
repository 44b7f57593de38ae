const hash = (text: string) => `hashtextextended(${text}, 0)`;
const positive = "& 9223372036854775807";

/** Staging columns for the key of a job and of the unit that its row names, or of one of its own where it names none. */
export const jobKeys = [
  `job_id bigint generated always as (${hash("job_number")} ${positive}) stored`,
  `given_unit_id bigint generated always as (case when serial_normalised is not null
       then ${hash("maker_n || '|' || serial_normalised")} else ${hash("'job|' || job_number")} end ${positive}) stored`,
] as const;

/** The key of the job whose number a row gives. */
export const namedJobKey = `named_job_id bigint generated always as (${hash("job_number")} ${positive}) stored`;
