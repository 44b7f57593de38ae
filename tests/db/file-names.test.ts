import { randomUUID } from "node:crypto";
import { existsSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { dropDraft, openDraft } from "@/app/files/_draft/open-draft";
import { stopWork } from "@/app/files/_work/file-work";
import { POST } from "@/app/files/upload/route";
import { contentOf, dropUpload, uploadsFolder } from "@/app/files/uploads";
import { closeDatabase } from "@/db/close-database";
import { claimFileName } from "@/lib/claims/claim-file-name";
import { headersAs } from "./people/signed-in";

let signed: Record<string, string> = {};
beforeAll(async () => {
  signed = await headersAs("administrator");
});
afterAll(closeDatabase);

const names = [
  "../../../../etc/passwd",
  "..\\..\\boot.ini",
  "/etc/shadow",
  "CON",
  "aux.csv",
  ".",
  "a\u0000b.csv",
  'x.csv"\r\nSet-Cookie: a=b',
  "🛠️ Müller’s jobs.csv",
  "\u202egnp.csv",
  "n".repeat(300),
];

/** A process looks at each file that arrives, so few are sent. */
const sent = [names[0], names[6], names[7], names[10]];

test.each(sent)(
  "a file named “%s” lies under a random id, whatever its name, which is only shown",
  async (name = "") => {
    const before = new Set(existsSync(uploadsFolder) ? readdirSync(uploadsFolder) : []);
    const request = new Request(`http://localhost/files/upload?name=${encodeURIComponent(name)}`, {
      method: "POST",
      body: "job_number\nJ1\n",
      headers: signed,
    });
    const response = await POST(request);
    expect(response.status).toBe(201);
    const { address } = (await response.json()) as { readonly address: string }; // as the route answers
    const id = address.split("/").at(-1) ?? "";
    try {
      expect(id).toMatch(/^[0-9a-f]{8}-[0-9a-f-]{27}$/);
      const made = readdirSync(uploadsFolder).filter((entry) => !before.has(entry));
      expect(made).toContain(id);
      expect(made.filter((entry) => !/^[0-9a-f]{8}-[0-9a-f-]{27}$/.test(entry))).toEqual([]);
      expect(readdirSync(join(uploadsFolder, id)).every((entry) => ["content", "report.csv"].includes(entry))).toBe(
        true,
      );
      const shown = (await openDraft(id))?.fileName ?? "";
      expect(shown.length).toBeLessThanOrEqual(200);
      expect(shown).not.toMatch(/\p{Cc}/u);
    } finally {
      stopWork(id);
      await dropDraft(id);
      await dropUpload(id);
    }
  },
);

test.each(["../x", "", "x", `${randomUUID()}/..`, `${randomUUID()}\u0000`])(
  "“%s” is no upload and leads to no file",
  (id) => {
    expect(() => contentOf(id)).toThrow(RangeError);
  },
);

test.each(names)(
  "a claim numbered “%s” is downloaded under a name that cannot leave its folder or its header",
  (number) => {
    expect(claimFileName(number)).toMatch(/^[A-Za-z0-9._-]+$/);
    expect(claimFileName(number)).not.toMatch(/^\./);
  },
);
