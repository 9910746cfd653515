// What can be done at a cell, in a sentence each, as one knitter tells another.
import { capital } from "./balance.js";
import { offers } from "./ledger.js";

// here returns the sentences for a cell: for the keyboard or for a finger, with
// something marked off or nothing.
export function here(model, y, x, { touch, marked }) {
  const cell = model.at(y, x);
  if (!cell) return [touch ? "No stitch lies here." : "No stitch lies here. Arrows lead to one."];
  const list = [`${capital(model.describe(y, x))}.`, touch ? "A tap marks it; two fingers move the chart." : "Enter marks it; Backspace takes it back to the plan."];
  if (!marked) list.push("To repeat stitches, mark them off first.");
  const offered = offers(model, y, x).filter((o) => !o.here);
  const named = (some) => some.map((o) => model.ops.get(o.code).abbr);
  const keep = named(offered.filter((o) => o.balanced));
  const { makes } = model.totals(y);
  const { noun } = model.row(y);
  list.push(keep.length > 0 ? `${either(keep)} here ${keep.length > 1 ? "keep" : "keeps"} the ${noun} at ${makes}.` : `Nothing else here keeps the ${noun} at ${makes}.`);
  const fewer = named(offered.filter((o) => !o.balanced && o.net === -1)).slice(0, 2);
  const more = named(offered.filter((o) => !o.balanced && o.net === 1)).slice(0, 2);
  if (more.length > 0) list.push(`${either(more)} would make it ${makes + 1}.`);
  if (fewer.length > 0) list.push(`${either(fewer)} would make it ${makes - 1}.`);
  return [...list, ...increases(model, y, touch), ...rounds(model, y)];
}

// increases says where the increases of a round could go, or which could come.
function increases(model, y, touch) {
  const how = touch ? "move an increase, then drag" : "i, then drag";
  const row = model.row(y);
  const free = (n) => model.row(n)?.section === row.section && makesMore(model, n) === 0;
  const n = makesMore(model, y);
  if (n > 0) {
    const to = [y - stepOf(row), y + stepOf(row)].filter(free).map((k) => model.row(k).round);
    if (to.length === 0) return [`Its increases have no free ${row.noun} beside them.`];
    return [`${n === 1 ? "The increase" : `The ${n} increases`} can go to ${row.noun} ${to.join(" or ")}: ${how}.`];
  }
  const near = [1, -1, 2, -2].map((by) => y + by).find((k) => model.row(k)?.section === row.section && makesMore(model, k) > 0);
  return near ? [`The increases of ${row.noun} ${model.row(near).round} can come here: ${how}.`] : [];
}

// stepOf returns how far increases go at least: of rows only those on one side are shaped.
export const stepOf = (row) => (row.noun === "row" ? 2 : 1);

// makesMore returns how many increases a round has as planned.
function makesMore(model, y) {
  return model.row(y).cells.filter((c) => model.ops.get(c.op).in === 0 && model.ops.get(c.op).out === 1 && /^(m1|lli|rli|yo)/.test(c.op)).length;
}

function rounds(model, y) {
  const row = model.row(y);
  const n = model.rows.filter((r) => r.section === row.section).length;
  if (row.noun === "row") return [`Two rows put in above make the ${row.name} ${n + 2} rows.`];
  return [`A round put in above makes the ${row.name} ${n + 1} rounds.`];
}

function either(words) {
  const all = words.length > 1 ? `${words.slice(0, -1).join(", ")} or ${words.at(-1)}` : words[0];
  return capital(all);
}
