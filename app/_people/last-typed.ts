// What was typed into the form that was sent last, kept in the memory of the page alone: when the answer is that it
// failed, the form is gone, and its words can be copied from here.

export interface TypedText {
  readonly label: string;
  readonly text: string;
}

interface LastTyped {
  readonly path: string;
  readonly texts: readonly TypedText[];
}

let last: LastTyped | undefined;

/** Notes what is about to be sent; a password never. */
export function noteTyped(form: HTMLFormElement): void {
  const texts = [...form.elements]
    .filter(isText)
    .map((element) => ({ label: labelOf(element), text: element.value }))
    .filter(({ text }) => text.trim() !== "");
  last = { path: window.location.pathname, texts };
}

/** For the page that it was sent from. */
export function lastTyped(path: string): readonly TypedText[] {
  return last?.path === path ? last.texts : [];
}

/** Whoever uses this page next may be somebody else. */
export function forgetTyped(): void {
  last = undefined;
}

const textTypes = ["text", "search", "date", "email", "textarea"];

function isText(element: Element): element is HTMLInputElement | HTMLTextAreaElement {
  const isInput = element instanceof HTMLInputElement || element instanceof HTMLTextAreaElement;
  return isInput && textTypes.includes(element.type);
}

function labelOf(element: HTMLInputElement | HTMLTextAreaElement): string {
  return element.labels?.[0]?.textContent?.trim() || element.getAttribute("aria-label") || element.name;
}
