// The cases that Go writes and both languages run.
import { readFileSync, readdirSync } from "node:fs";

const folder = new URL("../chart/", import.meta.url);

const all = readdirSync(folder)
  .filter((name) => name.endsWith(".json"))
  .map((name) => ({ name, ...JSON.parse(readFileSync(new URL(name, folder), "utf8")) }));

export const cases = all.filter((c) => c.page);
export const runs = all.filter((c) => c.seed);
export const page = (name) => structuredClone(cases.find((c) => c.name === `${name}.json`).page);
