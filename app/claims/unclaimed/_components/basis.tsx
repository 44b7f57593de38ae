/** What stands behind the list, for its margin. */
export function Basis() {
  return (
    <>
      <p>
        Every closed job of the whole history on which a payer’s terms on file cover some pay item and no claim was
        made, and every claim whose money the payer kept. Judged anew whenever a policy, a unit, a job or a claim
        changes.
      </p>
      <p>
        Amounts follow the payer’s schedule and the invoices on the job, limits and the customer’s share taken off. What
        is missing may still keep a claim from being paid.
      </p>
      <p>
        Work whose filing day has passed is shown apart: a payer may refuse it, or may grant it where asked. The last
        day to dispute is taken as the policy’s time for resubmission, counted from the answer: common practice, no
        source.
      </p>
      <p>The policy’s wording and local law decide. This is no legal advice.</p>
    </>
  );
}
