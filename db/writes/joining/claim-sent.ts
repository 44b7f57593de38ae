/** SQL: a claim on the job has left the house. */
export function claimSent(unit: string, job: string): string {
  return `exists (select from claims c where c.unit_id = ${unit} and c.job_id = ${job} and c.state not in ('draft', 'withdrawn'))`;
}
