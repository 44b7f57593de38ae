import { addDays, day } from "@/lib/calendar/day";
import type { CoverageFacts } from "@/lib/coverage/coverage-facts";
import { decideCoverage } from "@/lib/coverage/decide-coverage";
import { knownDay } from "@/lib/coverage/known-date";
import { demoPolicies } from "../../synthetic-data/plan-policies";
import { seeded } from "../calendar/seeded";
import { sampleFacts } from "../coverage/sample-facts";

type Say = (what: string, value: string) => void;

const components = ["drain_pump", "control_board", "compressor", "inlet_valve", "door_seal"];

/** Jobs of every age, component and start that the demo's policies speak of, the same on every run. */
function madeFacts(count: number): readonly CoverageFacts[] {
  const random = seeded(50_000);
  const makers = [...new Set(demoPolicies().flatMap(({ maker }) => maker ?? []))];
  return Array.from({ length: count }, (_, index) => {
    const bought = addDays(day("2015-01-01"), random(4000));
    const reported = addDays(bought, random(3000));
    return sampleFacts({
      reported,
      firstVisit: addDays(reported, 2),
      completed: addDays(reported, 6),
      component: components[random(components.length)],
      ...(random(10) === 0 ? { outForRepair: [{ from: addDays(bought, 20), until: addDays(bought, 30) }] } : {}),
      unit: {
        maker: makers[index % makers.length] ?? "Maker",
        territory: random(5) === 0 ? "US-CA" : "US",
        serial: `B24${String(random(100_000_000)).padStart(9, "0")}`,
        dates: {
          purchase: random(4) === 0 ? undefined : knownDay(bought, "receipt"),
          delivery: knownDay(addDays(bought, 3)),
          installation: knownDay(addDays(bought, 5)),
        },
      },
    });
  });
}

/** Decisions with every rule looked at, a second of processor time on one core. */
export function benchCoverage(say: Say): void {
  const facts = madeFacts(20_000);
  const policies = demoPolicies();
  const rates = Array.from({ length: 7 }, () => {
    const before = process.cpuUsage();
    for (const one of facts) decideCoverage(one, policies);
    const { user, system } = process.cpuUsage(before);
    return (1_000_000 * facts.length) / (user + system);
  });
  const [cold = Number.NaN, ...warm] = rates;
  const median = warm.sort((a, b) => a - b)[3] ?? Number.NaN;
  say("coverage decisions a second on one core, cold", cold.toFixed(0));
  say("  warm (wanted: 50,000)", median.toFixed(0));
}
