// A thousand parts, each carried by machines of its own: lives, futures and back-tests together.
import { ComponentFleet, partFleet } from "@/lib/forecast/fleet/part-fleet";
import { PiecesTaken } from "@/lib/forecast/fleet/pieces-taken";
import { forecastDemand, learnDemand, testSettings } from "@/lib/forecast/forecast-demand";
import { demandPaths } from "@/lib/forecast/paths";
import { keptFutures } from "@/lib/forecast/stored-outlook";
import { AgeTally } from "@/lib/statistics/life/lived-ages";
import { randomSource } from "../statistics/random-source";
import { say } from "./say";

const months = 60;
const machines = 300;

/** Prints the processor time of the whole forecast, 24 months and 400 futures, of so many parts. */
export function benchForecastFleets(parts = 1000): void {
  const random = randomSource(5);
  const made = Array.from({ length: parts }, (_, seed) => madeFleet(random, seed));
  const before = process.cpuUsage();
  const knowledge = learnDemand(made.map(({ history }) => history));
  let lives = 0;
  for (const { history, fleet, seed } of made) {
    const { method } = partFleet(fleet, { history, pieces: new PiecesTaken([1]), seed });
    const forecast = forecastDemand(history, { horizon: keptFutures.horizon, knowledge, fleet: method });
    if (forecast.kind !== "forecast") continue;
    if (forecast.method === "fleet-lives") lives += 1;
    demandPaths(forecast.future, { ...keptFutures, seed });
  }
  const { user, system } = process.cpuUsage(before);
  say(
    `${parts} parts in ${parts} fleets x 24 months with back-test and ${keptFutures.futures} futures, ${lives} by lives (wanted: 10 s)`,
    `${((user + system) / 1e6).toFixed(1)} s of processor time`,
  );
}

/** Machines that came over ten years; their component fails by a Weibull life and is renewed; every failure takes the part. */
function madeFleet(random: ReturnType<typeof randomSource>, seed: number) {
  const [shape, scale] = [0.8 + 2 * random.uniform(), 100 + 300 * random.uniform()];
  const [now, earlier] = [new AgeTally(), new AgeTally()];
  const history = new Array<number>(months).fill(0);
  const running = Array.from({ length: testSettings.origins + 1 }, () => new Float64Array(122));
  for (let machine = 0; machine < machines; machine++) {
    const came = -120 * random.uniform();
    const draw = () => scale * (-Math.log(random.uniform())) ** (1 / shape);
    let began = came;
    let fails = came + draw();
    for (; fails < 0; began = fails, fails += draw()) {
      const month = months + Math.floor(fails);
      if (month >= 0) history[month] = (history[month] ?? 0) + 1;
      now.add(0, fails - began, true, 1);
      if (fails < -testSettings.origins) earlier.add(0, fails - began, true, 1);
    }
    now.add(0, -began, false, 1);
    if (began < -testSettings.origins) earlier.add(0, -testSettings.origins - began, false, 1);
    for (const [ago, ages] of running.entries()) {
      const age = Math.floor(-ago - began);
      if (age >= 0) ages[age] = (ages[age] ?? 0) + 1;
    }
  }
  const others = { left: { machines: 20, months: machines * 36 }, came: Float64Array.of(30) };
  const fleet = new ComponentFleet({
    record: {
      failures: history,
      running,
      now: { lives: now.counts(), ...others },
      beforeTest: { lives: earlier.counts(), ...others },
    },
    maker: undefined,
    wear: { now: undefined, beforeTest: undefined },
    firstMonth: 0,
    signals: [],
    ...keptFutures,
    seed,
  });
  return { history, fleet, seed };
}
