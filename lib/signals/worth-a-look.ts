import type { JudgedCell, Story } from "./evidence-of-luck";
import { cellKeyText } from "./signal-record";

/** One line of the list: a story beyond luck, told by the cell that holds most of it. */
export interface FoundSignal {
  readonly lead: JudgedCell;
  readonly story: Story;
  /** Symptoms and fault codes whose excess is these failures, seen once more. */
  readonly symptoms: readonly Story[];
}

/** Share of the excess that a narrower cell must hold to speak for the whole. Own choice, no source. */
const mostOfIt = 0.7;
/** Share of a symptom's excess that must be failures of one component already listed for the symptom to be its shadow. Own choice, no source. */
const shadow = 0.5;

/**
 * What is worth a look: stories whose adjusted chance is at or below the level, worst luck first. A symptom or fault code that is only
 * the other side of a listed component's failures stands in that component's line.
 * @param level  share of the list that may be luck
 */
export function worthALook(stories: readonly Story[], level: number): FoundSignal[] {
  const beyond = stories
    .filter(({ adjusted }) => adjusted <= level)
    .map((story) => ({ story, lead: leadOf(story) }))
    .toSorted((a, b) => a.story.chance - b.story.chance || (nameOf(a) < nameOf(b) ? -1 : 1));
  const components = beyond.filter(({ lead }) => lead.key.kind === "component");
  const shadows = new Map(
    beyond
      .filter(({ lead }) => lead.key.kind !== "component")
      .map((symptom) => [
        symptom.story,
        components.find((component) => castsShadow(component.lead, symptom.lead))?.story,
      ]),
  );
  return beyond
    .filter(({ story }) => shadows.get(story) === undefined)
    .map(({ story, lead }) => ({
      lead,
      story,
      symptoms: [...shadows].filter(([, component]) => component === story).map(([symptom]) => symptom),
    }));
}

/** The narrowest cell that still holds most of the excess, so that a bad lot is not told as a bad model, nor a bad model as a lot. */
export function leadOf({ cells }: Story): JudgedCell {
  const raised = cells.filter(({ standing }) => standing.score > 0);
  const most = Math.max(0, ...raised.map(excessOf));
  const candidates = raised.filter((cell) => excessOf(cell) >= mostOfIt * most);
  const [first, ...others] = candidates.length > 0 ? candidates : cells;
  if (first === undefined) throw new RangeError("cells: a story has at least one");
  return others.reduce((lead, cell) => (isBetter(cell, lead) ? cell : lead), first);
}

/** Narrower first; of two equally narrow ones the one that luck explains less. */
function isBetter(cell: JudgedCell, than: JudgedCell): boolean {
  const [own, other] = [narrowness(cell), narrowness(than)];
  return own === other ? cell.chance < than.chance : own > other;
}

function narrowness({ key }: JudgedCell): number {
  return key.madeHalf !== undefined ? 2 : key.model !== undefined ? 1 : 0;
}

function excessOf({ standing: { observed, expected } }: JudgedCell): number {
  return observed - expected;
}

function castsShadow(component: JudgedCell, symptom: JudgedCell): boolean {
  const [own, other] = [component.key, symptom.key];
  if (own.productType !== other.productType || own.maker !== other.maker) return false;
  const { firstWeek, observed, carrying } = symptom.weeks();
  const carried = carrying(symptom.standing.onsetWeek, firstWeek + observed.length - 1).get(own.word) ?? 0;
  return carried >= shadow * excessOf(symptom);
}

function nameOf({ lead }: { readonly lead: JudgedCell }): string {
  return cellKeyText(lead.key);
}
