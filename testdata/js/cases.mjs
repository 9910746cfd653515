// The cases that Go writes and both languages run.
import { readFileSync, readdirSync } from "node:fs";

const folder = new URL("../chart/", import.meta.url);

export const cases = readdirSync(folder)
  .filter((name) => name.endsWith(".json"))
  .map((name) => ({ name, ...JSON.parse(readFileSync(new URL(name, folder), "utf8")) }));
