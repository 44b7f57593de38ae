import type { Held } from "./held";
import type { PromiseKey } from "./promises";

/** What is promised of signing in, roles and sessions, and the tests of it. */
export const heldOfPeople: Partial<Readonly<Record<PromiseKey, readonly Held[]>>> = {
  S1: [
    { file: "tests/people/guarded-routes.test.ts", test: "asks who opens it before anything else" },
    { file: "tests/people/guarded-routes.test.ts", test: "asks who calls it" },
    { file: "tests/people/guarded-routes.test.ts", test: "asks who does it before anything else" },
    { file: "tests/people/permissions.test.ts", test: "changes what the role is for and nothing else" },
    {
      file: "e2e/people.spec.ts",
      test: "no role opens a page or an address that the table of acts does not give it, and nobody opens any",
    },
    {
      file: "tests/db/people/same-work.test.ts",
      test: "%s takes a technician the same statements as one that never was",
    },
  ],
  S2: [
    {
      file: "tests/db/people/same-work.test.ts",
      test: "%s takes a technician the same statements as one that never was",
    },
    {
      file: "tests/db/people/own-jobs.test.ts",
      test: "to a technician another's job is not there, and reads as one that never was",
    },
    { file: "tests/people/guarded-routes.test.ts", test: "asks whose job it is as well" },
    {
      file: "e2e/own-jobs.spec.ts",
      test: "another's job is not there behind any page or address, and no form of one's own reaches it",
    },
  ],
  S5: [
    { file: "tests/db/photos-job.test.ts", test: "a form from another site is turned away" },
    { file: "tests/people/same-origin.test.ts", test: "what the browser itself calls cross-site" },
    { file: "tests/people/may-do.test.ts", test: "an action with %s is forbidden, whoever is signed in" },
  ],
  S6: [{ file: "tests/people/password-rules.test.ts", test: "test" }],
  S7: [
    {
      file: "tests/db/people/signing-in.test.ts",
      test: "take scrypt with N = 2^17, r = 8, p = 1, never twice the same, and only the whole of one matches",
    },
    {
      file: "tests/db/people/signing-in.test.ts",
      test: "of eight passwords that come at once never more than two are reckoned with at a time, and all are answered",
    },
  ],
  S8: [
    {
      file: "tests/db/people/same-work.test.ts",
      test: "takes one hash of the same cost and the same statements but one, whether the address is known or not",
    },
    {
      file: "tests/people/sign-in-delay.test.ts",
      test: "whoever tries whenever they may gets ten tries in any quarter of an hour of a day",
    },
    {
      file: "tests/db/people/signing-in.test.ts",
      test: "from two hundred places an account takes a hundred wrong tries in a row, and a known device still gets in",
    },
    {
      file: "tests/db/people/many-guesses.test.ts",
      test: "a thousand on one account are slowed down and a hundred in a row, and its owner gets in meanwhile",
    },
    {
      file: "tests/db/people/many-guesses.test.ts",
      test: "ten thousand over five hundred accounts find of each no more than ten a quarter of an hour, known or not",
    },
  ],
  S9: [
    { file: "tests/db/people/signing-in.test.ts", test: "ends all of them at once" },
    {
      file: "tests/db/people/signing-in.test.ts",
      test: "half an hour without a request ends it at the desk, twelve hours end it everywhere",
    },
    { file: "e2e/people.spec.ts", test: "a session that is ended elsewhere opens nothing from then on" },
  ],
  S10: [
    { file: "tests/db/people/second-factor.test.ts", test: "each code of it opens once" },
    {
      file: "tests/db/people/second-factor.test.ts",
      test: "a phone may be half a minute fast or slow, and not a whole one",
    },
    {
      file: "tests/db/people/own-jobs.test.ts",
      test: "an owner without a second factor takes no file that may name customers, once the company is a real one",
    },
  ],
};
