import { answerDays } from "@/lib/claims/life/waiting";

/** What the lists of claims rest on. */
export function Basis() {
  return (
    <>
      <p>
        Not claimed yet: closed jobs whose component failed, inside the longest filing window on file, decided by the
        payer’s terms on file as of today. A job is listed although something may still be missing: open it to see what.
      </p>
      <p>
        Amounts follow the payer’s schedule and the invoices on the job. A draft follows its job; what was sent stays as
        it was sent.
      </p>
      <p>
        An answer is late after {answerDays} days (common practice, no source). The policy’s wording and local law
        decide.
      </p>
    </>
  );
}
