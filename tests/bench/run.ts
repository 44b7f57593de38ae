// Speed as ratios measured in one run, and how cost grows over ten times the size. Nothing here fails on a slow machine.
import { fileURLToPath } from "node:url";
import { componentLife } from "@/lib/failures/component-life";
import { failureRates } from "@/lib/failures/failure-rates";
import { benchCoverage } from "./coverage";
import { benchEqualTimes } from "./equal-times";
import { filesStall } from "./files-stall";
import { benchForecast, benchForecastSpeed } from "./forecast";
import { benchForecastDemo } from "./forecast-demo";
import { benchForecastFleets } from "./forecast-fleets";
import { benchForecastEnds, benchForecastLives } from "./forecast-lives";
import { intakeAgainstCopy } from "./intake";
import { exportAgainstCopy } from "./intake-export";
import { benchLives } from "./lives";
import { madeCells } from "./made-cells";
import { benchPacket } from "./packet";
import { benchPartsPages } from "./parts-pages";
import { benchRepeatsPages } from "./repeats-pages";
import { say } from "./say";
import { benchSheet } from "./sheet";
import { benchSignals } from "./signals";
import { benchSignalsScale } from "./signals-scale";
import { benchSignalsWeekly } from "./signals-weekly";
import { benchUnclaimed } from "./unclaimed";

const medianOf = (times: readonly number[]) =>
  [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)] ?? Number.NaN;

/** Median time of a run; where there are several, after two that only warm the engine. */
async function milliseconds(work: () => unknown, runs = 7): Promise<number> {
  for (let warm = 0; runs > 1 && warm < 2; warm++) await work();
  const times: number[] = [];
  for (let run = 0; run < runs; run++) {
    const before = performance.now();
    await work();
    times.push(performance.now() - before);
  }
  return medianOf(times);
}

async function ratesFromCounts(): Promise<void> {
  const until = 8000;
  const [small, large] = [madeCells(500, until), madeCells(5000, until)];
  const ask = (cells: typeof small) => () =>
    failureRates(cells, {
      by: ["component", "age"],
      counting: "failures",
      from: undefined,
      until,
      where: {},
      level: 0.95,
    });
  const life = (cells: typeof small) => () =>
    componentLife(cells, { component: "pump", from: undefined, until, where: {}, level: 0.95 });
  const rates = [await milliseconds(ask(small)), await milliseconds(ask(large))] as const;
  const lives = [await milliseconds(life(small)), await milliseconds(life(large))] as const;
  say("rates by component and age, 5,000 windows and 10,000 job cells", `${rates[1].toFixed(0)} ms`);
  say("  ten times the counts cost", `${(rates[1] / rates[0]).toFixed(1)} x`);
  say("curve, Weibull with profile limits and recurrence, the same counts", `${lives[1].toFixed(0)} ms`);
  say("  ten times the counts cost", `${(lives[1] / lives[0]).toFixed(1)} x`);
}

const parts: Readonly<Record<string, () => Promise<void>>> = {
  signals: async () => benchSignals(rowsAsked() ?? 200),
  "signals-scale": async () => benchSignalsScale(),
  "signals-weekly": () => benchSignalsWeekly(rowsAsked()),
  rates: async () => {
    await ratesFromCounts();
    benchLives(say);
    await benchPacket(say);
    benchCoverage(say);
  },
  intake: () => intakeAgainstCopy(rowsAsked()),
  "intake-export": () => exportAgainstCopy(rowsAsked()),
  unclaimed: () => benchUnclaimed(rowsAsked()),
  "files-stall": () => filesStall(rowsAsked()),
  forecast: async () => {
    benchForecast(partsFile(), 0);
    benchForecastSpeed(partsFile());
    benchForecastFleets();
  },
  // The months on which settings were tuned: the eleven that the table above judges do not exist here.
  "forecast-tuning": async () => benchForecast(partsFile(), 11),
  sheet: async () => benchSheet(),
  "forecast-demo": async () => benchForecastDemo(rowsAsked() ?? 50),
  "forecast-lives": async () => {
    benchForecastLives(rowsAsked() ?? 200);
    benchForecastEnds(rowsAsked() ?? 200);
  },
  "repeats-pages": () => benchRepeatsPages(rowsAsked()),
  "parts-pages": () => benchPartsPages(rowsAsked()),
  "equal-times": () => benchEqualTimes(rowsAsked()),
};

/** `npm run bench -- forecast other.csv` judges by other parts in the same form. */
function partsFile(): string {
  const asked = process.argv[2]?.startsWith("forecast") ? process.argv[3] : undefined;
  return asked ?? fileURLToPath(new URL("../reference/data/car_parts_monthly.csv", import.meta.url));
}

function rowsAsked(): number | undefined {
  return process.argv[3] === undefined ? undefined : Number(process.argv[3]);
}

/** `npm run bench` runs all of it, `npm run bench -- intake 200000` one part, with fewer rows. */
async function main(): Promise<void> {
  const asked = process.argv[2];
  for (const [name, part] of Object.entries(parts)) if (asked === undefined || asked === name) await part();
}

main().then(
  () => process.exit(0),
  (error: unknown) => {
    console.error(error);
    process.exit(1);
  },
);
