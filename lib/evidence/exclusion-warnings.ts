// Words in the story that a payer may read as an exclusion. They are pointed out; the text stays as it was written.
// The list is common practice, no source.
import type { Cause } from "@/lib/domain/cause";
import type { ClosedJob } from "@/lib/domain/job";
import type { WordWarning } from "./evidence-check";

const fields = ["complaint", "causeNote", "correction"] as const;

export function exclusionWarnings(job: Pick<ClosedJob, (typeof fields)[number]>): readonly WordWarning[] {
  return fields.flatMap((field) =>
    exclusionWords.flatMap(({ word, matches, pointsTo, except }) =>
      matches.test(withoutPart(job[field], except)) ? [{ word, field, pointsTo }] : [],
    ),
  );
}

interface ExclusionWord {
  readonly word: string;
  readonly matches: RegExp;
  readonly pointsTo: Cause;
  /** A use of the word that points nowhere, such as a hose that was found clear. */
  readonly except?: RegExp;
}

function withoutPart(text: string, part: RegExp | undefined): string {
  return part === undefined ? text : text.replace(part, " ");
}

const exclusionWords: readonly ExclusionWord[] = [
  { word: "adjusted", matches: /\b(re)?adjust(ed|ment)?\b/i, pointsTo: "maintenance" },
  { word: "cleaned", matches: /\bclean(ed|ing)\b/i, pointsTo: "maintenance" },
  { word: "reset", matches: /\breset\b/i, pointsTo: "no_fault_found" },
  { word: "tightened", matches: /\btighten(ed)?\b/i, pointsTo: "installation" },
  {
    word: "customer instructed",
    matches: /\b(instruct(ed)?|educat(ed|ion)|showed customer)\b/i,
    pointsTo: "education",
  },
  { word: "checked OK", matches: /\b(checked|tested|tests?) ok\b/i, pointsTo: "no_fault_found" },
  { word: "intermittent", matches: /\bintermittent(ly)?\b/i, pointsTo: "no_fault_found" },
  {
    word: "could not duplicate",
    matches: /\b(could not|couldn't|cannot|unable to) (duplicate|reproduce)\b|\b(cnr|cnd|nff|ntf)\b/i,
    pointsTo: "no_fault_found",
  },
  {
    word: "installed",
    matches: /\binstall(ation|ed)\b/i,
    pointsTo: "installation",
    except: /\binstalled (a )?new\b/gi,
  },
  { word: "levelled", matches: /\b(re-?)?level(l?ed|l?ing)\b/i, pointsTo: "installation" },
  { word: "vent", matches: /\bvents?\b/i, pointsTo: "maintenance", except: /\bvents?( is| was)? (clear|good|ok)\b/gi },
  { word: "hose", matches: /\bhoses?\b/i, pointsTo: "installation", except: /\bhoses?( is| was)? (clear|good|ok)\b/gi },
  { word: "preventive", matches: /\bprevent(at)?ive\b/i, pointsTo: "maintenance" },
  {
    word: "object",
    matches: /\b(coins?|foreign object|underwire|bra wire|hair ?pin|sock|toy)\b/i,
    pointsTo: "foreign_object",
    except: /\bno (coins?|foreign objects?)\b/gi,
  },
  {
    word: "suds",
    matches: /\b(suds|sudsing|detergent|soap)\b/i,
    pointsTo: "suds_detergent",
    except: /\b(no suds|suds( is| was)? none)\b/gi,
  },
  {
    word: "lightning",
    matches: /\b(lightning|power surge|surge)\b/i,
    pointsTo: "surge_lightning",
    except: /\bno (surge|lightning)\b/gi,
  },
  { word: "frozen", matches: /\b(frozen|froze|frost damage)\b/i, pointsTo: "freeze" },
  { word: "mice", matches: /\b(mice|mouse|rodents?|roach(es)?|ants|insects?)\b/i, pointsTo: "liquid_pest" },
  { word: "commercial use", matches: /\b(commercial|salon|laundromat|shared laundry)\b/i, pointsTo: "commercial_use" },
];
