import { describe, expect, test } from "vitest";
import { ageFlows } from "@/lib/statistics/survival/age-flows";
import { expectClose, oneFromR } from "../../reference/read-reference";
import { madeUpLives } from "../survival/made-up-lives";
import {
  ballBearings,
  bearingCages,
  generatorFans,
  macs,
  rescaled,
  rossi,
  stoppedTest,
} from "../survival/reference-lives";
import { fitted, logLikelihoodOf } from "./fitted-weibull";
import { alphaParticles, heatExchanger, turbineWheels } from "./reference-inspections";

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

// By definition: rows, single lives and flows say the same.
test("grouped rows, single lives and flows give one fit", () => {
  const rows = madeUpLives(300).filter((row) => row.exit > 0);
  const single = rows.flatMap((row) => Array.from({ length: row.count }, () => ({ ...row, count: 1 })));
  const expected = fitted(rows);
  for (const source of [single, ageFlows(rows)]) {
    const fit = fitted(source);
    expectClose(fit.shape.value, expected.shape.value, 1e-12);
    expectClose(fit.scale.value, expected.scale.value, 1e-12);
    expectClose(Number(fit.scale.profile.high), Number(expected.scale.profile.high), 1e-9);
  }
});

// By definition: the likelihood written out, falling away from the fit on every side.
test("no step away from the fit is better, with late entry", () => {
  const rows = madeUpLives(300).filter((row) => row.exit > 0);
  const { shape, scale, logLikelihood } = fitted(rows);
  expectClose(logLikelihoodOf(rows, shape.value, scale.value), logLikelihood, 1e-12);
  for (const [up, over] of [
    [1e-3, 0],
    [-1e-3, 0],
    [0, 1e-3],
    [0, -1e-3],
    [7e-4, 7e-4],
    [7e-4, -7e-4],
  ] as const) {
    expect(logLikelihoodOf(rows, shape.value * (1 + up), scale.value * (1 + over))).toBeLessThan(logLikelihood);
  }
});
