import type { Held } from "./held";
import type { PromiseKey } from "./promises";

/** What is promised of attacks that need nobody's password, and the tests of it. */
export const heldOfSafety: Partial<Readonly<Record<PromiseKey, readonly Held[]>>> = {
  S3: [
    { file: "tests/promises/markup.test.ts", test: "%s is shown as it was written, and is no markup" },
    { file: "tests/promises/markup.test.ts", test: "no page writes markup that it did not make itself" },
    {
      file: "e2e/words-that-would-run.spec.ts",
      test: "stand on every page as they were loaded and typed, and do nothing",
    },
    {
      file: "e2e/words-that-would-run.spec.ts",
      test: "stand in files so that no spreadsheet runs them, and word for word in documents and packets",
    },
    {
      file: "e2e/words-that-would-run.spec.ts",
      test: "stand in what an address, a name or a browser says of itself, before and after signing in",
    },
  ],
  S11: [
    {
      file: "tests/db/hostile-words.test.ts",
      test: "hostile words find nothing, change nothing and break nothing, wherever a word can be asked for",
    },
    { file: "tests/db/site-role.test.ts", test: "is refused to the site" },
    {
      file: "tests/db/site-role.test.ts",
      test: "the program itself signs in as the site, which may do no more than it must",
    },
  ],
  S4: [
    {
      file: "tests/promises/headers.test.ts",
      test: "pages load nothing from elsewhere, hold no plug-in, stand in no frame, and send forms nowhere else",
    },
    {
      file: "tests/promises/headers.test.ts",
      test: "each answer has a nonce of its own, and one that came with the request is thrown away",
    },
    {
      file: "e2e/every-page.spec.ts",
      test: "a script that got into a page by whatever way does not run, and the page's own go on",
    },
  ],
  S12: [
    {
      file: "tests/db/errors-tell-nothing.test.ts",
      test: "%s fails, as it cannot know who asks, and tells nothing of the inside",
    },
    { file: "tests/db/errors-tell-nothing.test.ts", test: "%s tells nothing of the inside" },
    { file: "tests/db/errors-without-values.test.ts", test: "%s is told without its values" },
    {
      file: "e2e/says-that-it-failed.spec.ts",
      test: "a page and an action that fail say so with a code and nothing of the inside, and work again when the cause is gone",
    },
    {
      file: "tests/app/log-failure.test.ts",
      test: "what a page or an action threw (%s) is one line in the log under the code that is shown, without what was asked for",
    },
  ],
  S13: [
    { file: "tests/db/client.test.ts", test: "a read past its time limit is stopped and says so" },
    {
      file: "tests/app/limit-costly.test.ts",
      test: "of fifty at once one is served and eight wait, the others are answered 429; another person finds no more than that one before them",
    },
    {
      file: "tests/app/limit-costly.test.ts",
      test: "a program is told so as a problem whose code is the one in the log",
    },
    { file: "tests/app/limit-costly.test.ts", test: "all sessions of one person stand in one line" },
  ],
  S14: [
    {
      file: "tests/promises/supply-chain.test.ts",
      test: "every package of the lock file is held by the hash of its content",
    },
    {
      file: "tests/promises/supply-chain.test.ts",
      test: "the licence of every package that is shipped is one of those that are known and allowed",
    },
  ],
  S15: [
    {
      file: "tests/promises/headers.test.ts",
      test: "no browser keeps what an address of ours answers, but for schemas",
    },
    { file: "tests/promises/headers.test.ts", test: "every answer asks for encryption for at least a year" },
    {
      file: "tests/db/people/behind-tls.test.ts",
      test: "the session's cookie is kept for this host and for TLS only, and opens through the proxy",
    },
    {
      file: "tests/db/people/behind-tls.test.ts",
      test: "a form from the site's own page is taken, one from elsewhere is not, whatever it says of its proxy",
    },
  ],
};
