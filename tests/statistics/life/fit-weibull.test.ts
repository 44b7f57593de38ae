import { describe, test } from "vitest";
import { fitWeibull, type WeibullFit } from "@/lib/statistics/life/fit-weibull";
import type { FitSource } from "@/lib/statistics/life/life-sample";
import { expectClose, oneFromR } from "../../reference/read-reference";
import {
  ballBearings,
  bearingCages,
  generatorFans,
  macs,
  rescaled,
  rossi,
  stoppedTest,
} from "../survival/reference-lives";
import { alphaParticles, heatExchanger, turbineWheels } from "./reference-inspections";

const options = { confidence: 0.95, minimumEvents: 1 } as const;

function fitted(source: FitSource): WeibullFit {
  const fit = fitWeibull(source, options);
  if (fit.kind !== "fitted") throw new Error(`expected a fit, got ${fit.reason}`);
  return fit;
}

// R 4.2.2, survival 3.5.3: survreg for censored lives, the likelihood maximised directly for late entry.
describe.each([
  ["nist", stoppedTest],
  ["bearing cage", bearingCages],
  ["genfan", generatorFans],
  ["ball bearings", ballBearings],
  ["heat exchanger", heatExchanger],
  ["turbine wheel", turbineWheels],
  ["alpha 20", () => alphaParticles(20)],
  ["alpha 10220", () => alphaParticles(10220)],
  ["rossi late entry", rossi],
  ["macs", macs],
])("%s agrees with R", (caseName, rows) => {
  test("scale, shape and log-likelihood to 1e-6", () => {
    const fit = fitted(rows());
    expectClose(fit.scale.value, Math.exp(oneFromR(`${caseName} weibull`, "location")), 1e-6);
    expectClose(fit.shape.value, 1 / oneFromR(`${caseName} weibull`, "spread"), 1e-6);
    expectClose(fit.logLikelihood, oneFromR(`${caseName} weibull`, "log_likelihood"), 1e-9);
  });
});

test.each([
  ["nist", stoppedTest],
  ["bearing cage", bearingCages],
  ["heat exchanger", heatExchanger],
])("%s: standard errors agree with R", (caseName, rows) => {
  const fit = fitted(rows());
  expectClose(fit.scale.logStandardError ** 2, oneFromR(`${caseName} weibull`, "location_variance"), 1e-6);
  expectClose(fit.shape.logStandardError ** 2, oneFromR(`${caseName} weibull`, "log_spread_variance"), 1e-6);
});

test.each([
  ["profile bearing cage", bearingCages],
  ["profile genfan", generatorFans],
])("%s: profile limits agree with a brute-force search in R", (caseName, rows) => {
  const { shape, scale } = fitted(rows());
  expectClose(Number(shape.profile.low), 1 / oneFromR(caseName, "spread_high"), 1e-6);
  expectClose(Number(shape.profile.high), 1 / oneFromR(caseName, "spread_low"), 1e-6);
  expectClose(Number(scale.profile.low), oneFromR(caseName, "scale_low"), 1e-6);
  expectClose(Number(scale.profile.high), oneFromR(caseName, "scale_high"), 1e-6);
});

test("the unit of age does not matter: hours or millionths of a century give one shape", () => {
  const hours = fitted(generatorFans());
  for (const factor of [1e-9, 1 / 24, 1e9]) {
    const other = fitted(rescaled(generatorFans(), factor));
    expectClose(other.shape.value, hours.shape.value, 1e-9);
    expectClose(other.scale.value, hours.scale.value * factor, 1e-9);
    expectClose(Number(other.shape.profile.high), Number(hours.shape.profile.high), 1e-8);
  }
});
