// The strands to look at, in a knitter's words: one line for each yarn and part,
// which opens to its rounds.

import { capital } from "./balance.js";
import { yarnsOf } from "./float.js";

// groups gathers long strands and rounds with too many yarns by part and yarn:
// { head, lines, list } of each, from the foot up. A line is { words, list }, and list are
// the strands themselves.
export function groups(model, list) {
  const by = new Map();
  for (const f of list) {
    const { section, name, round, noun } = model.row(f.y);
    const key = `${section} ${f.yarn}`;
    const group = by.get(key) ?? { name, noun, yarn: model.yarns.get(f.yarn).name, rounds: new Map(), most: 0, list: [] };
    group.most = Math.max(group.most, f.length);
    group.rounds.set(round, [...(group.rounds.get(round) ?? []), f]);
    group.list.push(f);
    by.set(key, group);
  }
  return [...by.values()].map(({ name, noun, yarn, rounds, most, list }) => ({
    head: `${capital(name)}, ${runs([...rounds.keys()], noun)}: ${yarn} is carried over ${rounds.size > 1 ? "up to " : ""}${most}; catch it every ${model.data.rules.float}.`,
    lines: [...rounds].map(([round, its]) => ({ words: `${noun} ${round}: over ${lengths(its)}`, list: its })),
    list,
  }));
}

// wanted returns a line for each round and yarn with strands that are meant, as { words, list }.
export function wanted(model, list) {
  const by = new Map();
  for (const f of list) {
    const { section, name, round, noun } = model.row(f.y);
    const key = `${section} ${round} ${f.yarn}`;
    const line = by.get(key) ?? { where: `${capital(name)}, ${noun} ${round}: ${model.yarns.get(f.yarn).name}`, list: [] };
    line.list.push(f);
    by.set(key, line);
  }
  return [...by.values()].map((line) => ({ words: `${line.where} over ${lengths(line.list)}`, list: line.list }));
}

function lengths(list) {
  return list.map((f) => f.length).join(", ");
}

// crowded returns a line for each part in which rounds have too many yarns.
export function crowded(model) {
  const most = model.data.rules.colours;
  const by = new Map();
  for (let y = 1; most > 0 && y <= model.height; y++) {
    const n = yarnsOf(model.totals(y));
    if (n <= most) continue;
    const { name, round, noun } = model.row(y);
    by.set(name, [...(by.get(name) ?? []), { round, n, noun }]);
  }
  return [...by].map(([name, list]) => ({
    head: `${capital(name)}, ${runs(list.map((r) => r.round), list[0].noun)}: more than ${most} yarns.`,
    lines: list.map(({ round, n, noun }) => ({ words: `${noun} ${round}: ${n} yarns`, list: [] })),
    list: [],
  }));
}

// runs names rounds or rows shortly: "rounds 4–9, 11".
export function runs(rounds, noun = "round") {
  const list = [];
  for (const n of rounds) {
    const last = list.at(-1);
    if (last?.[1] === n - 1) last[1] = n;
    else if (last?.[1] !== n) list.push([n, n]);
  }
  const words = list.map(([a, b]) => (a === b ? String(a) : `${a}–${b}`)).join(", ");
  return `${noun}${rounds.length === 1 ? "" : "s"} ${words}`;
}
