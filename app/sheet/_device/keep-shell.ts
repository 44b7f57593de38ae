/** Has the page and what it is made of kept on the device, and asks that the browser does not clear the store by itself. */
export async function keepShell(onKept: () => void): Promise<void> {
  // Some browsers ask the person first, and answer only then: nothing waits for that.
  navigator.storage?.persist?.().catch(() => false);
  if (!("serviceWorker" in navigator)) return;
  try {
    await navigator.serviceWorker.register("/sheet-worker.js", { scope: "/sheet" });
    navigator.serviceWorker.addEventListener("message", ({ data }) => {
      if (data?.keptAll === true) onKept();
    });
    const worker = (await navigator.serviceWorker.ready).active;
    const loaded = performance.getEntriesByType("resource").map(({ name }) => name);
    const keep = [location.href, ...loaded.filter((address) => isProgramFile(new URL(address)))];
    worker?.postMessage({ keep: [...new Set(keep)] });
  } catch {
    // A browser that forbids it works with signal only; answers are kept on the device all the same.
  }
}

const patienceMilliseconds = 3_000;

/** Has the page kept as the server has it now, where there is signal; waits for that as long as a person would. */
export async function keepPage(): Promise<void> {
  const registration = await navigator.serviceWorker?.getRegistration("/sheet").catch(() => undefined);
  const worker = registration?.active;
  if (worker == null) return;
  const { port1: answers, port2: asks } = new MessageChannel();
  const done = new Promise<void>((resolve) => {
    answers.onmessage = () => resolve();
    setTimeout(resolve, patienceMilliseconds);
  });
  worker.postMessage({ renew: [location.href] }, [asks]);
  await done;
  answers.close();
}

/** The page of a closed job is not kept any longer. */
export async function forgetPage(path: string): Promise<void> {
  const registration = await navigator.serviceWorker?.getRegistration("/sheet").catch(() => undefined);
  registration?.active?.postMessage({ forget: [new URL(path, location.origin).href] });
}

/** Never what the page asked for by itself: the complaint is one of those, and it may name the customer. */
function isProgramFile({ origin, pathname }: URL): boolean {
  return origin === location.origin && (pathname.startsWith("/_next/static/") || /\.(woff2?|svg)$/.test(pathname));
}
