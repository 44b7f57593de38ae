import { setTimeout as pause } from "node:timers/promises";
import { expect, test } from "vitest";
import { asActor, currentActor } from "@/db/actor";

test("two people at once each work under their own name, and nobody else under either", async () => {
  const work = async () => {
    const seen = [currentActor()];
    await pause(5);
    return [...seen, await asActor("the program", async () => pause(1).then(currentActor)), currentActor()];
  };
  const [kim, lee] = await Promise.all([asActor("Kim", work), asActor("Lee", work)]);
  expect(kim).toEqual(["Kim", "the program", "Kim"]);
  expect(lee).toEqual(["Lee", "the program", "Lee"]);
  expect(currentActor()).toBe("");
});
