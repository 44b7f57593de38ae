import Link from "next/link";
import { Notice } from "@/app/_ui/notice";
import type { OpenSignal } from "@/db/queries/open-signals";
import type { StoredOutlook } from "@/lib/forecast/stored-outlook";
import { countsWords, fleetWords, signalInForecast } from "../fleet-words";
import type { KnownPart } from "../load-part";

/** The machines that carry the part, and what Repeats has found of its component. */
export function PartDrivers({ view: { part, signals } }: { readonly view: KnownPart }) {
  const { outlook, component, componentName } = part;
  const fleet = outlook.kind === "forecast" ? outlook.fleet : undefined;
  const sentences = fleet === undefined ? [] : fleetWords(fleet, componentName ?? component ?? "");
  if (sentences.length === 0 && signals.length === 0) return null;
  return (
    <section className="stack-tight">
      <h2>What drives it</h2>
      {signals.map((signal) => (
        <SignalNotice key={signal.key} signal={signal} outlook={outlook} />
      ))}
      {sentences.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      {component !== undefined && (
        <p>
          <Link href={`/repeats/${component}`}>When it fails, and in which models</Link>
        </p>
      )}
    </section>
  );
}

function SignalNotice({ signal, outlook }: { readonly signal: OpenSignal; readonly outlook: StoredOutlook }) {
  const { key, wordName, lead } = signal;
  const machines = lead.key.model === undefined ? lead.key.maker : `${lead.key.maker} ${lead.key.model}`;
  return (
    <Notice status="watch" title={`${wordName} of ${machines} fails more than it should`}>
      <p>
        {countsWords(signal)}. {signalInForecast(signal, outlook)}{" "}
        <Link href={`/repeats/signals/${encodeURIComponent(key)}`}>What Repeats has found</Link>
      </p>
    </Notice>
  );
}
