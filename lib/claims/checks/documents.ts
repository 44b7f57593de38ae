import { checkOf, type FilingCase, type FilingCheck, onJob } from "./filing-case";

/** Readings and photos that this failure is proven by. Source: what each needs is in lib/evidence; "illegible" is on a published maker's list of 1996. */
export function documentsChecked({ claim }: FilingCase): FilingCheck {
  const tasks = claim.tasks.filter(({ key }) => key === "readings" || key === "photos");
  const fixes = tasks.flatMap((task) => task.fixes);
  return checkOf("documents", onJob, [
    ...fixes.map((fix) => ({ wrong: fix })),
    ...(fixes.length === 0 ? [{ fine: "Every reading and photo that this failure asks for is there." }] : []),
  ]);
}
