import assert from "node:assert/strict";
import { readFileSync, readdirSync } from "node:fs";
import test from "node:test";
import * as events from "../../static/js/events.js";

const folder = new URL("../../static/js/", import.meta.url);
const scripts = readdirSync(folder, { recursive: true })
  .filter((name) => name.endsWith(".js"))
  .map((name) => ({ name, text: readFileSync(new URL(name, folder), "utf8") }));
const users = scripts.filter(({ name }) => name !== "events.js");

// Events of the browser that a script may tell as if somebody had typed.
const native = new Set(["input", "change"]);

test("no script makes or hears an event of ours but by its name in events.js", () => {
  assert.ok(users.length > 20);
  for (const { name, text } of users) {
    assert.ok(!text.includes("CustomEvent"), `${name} makes a CustomEvent`);
    for (const [said, type] of text.matchAll(/new Event\("([^"]*)"/g)) assert.ok(native.has(type), `${name}: ${said}`);
    for (const [said] of text.matchAll(/(?:addEventListener|removeEventListener)\(\s*["'`]thenar[^,]*/g)) assert.fail(`${name}: ${said}`);
  }
});

test("each event is told and heard, by those that its comment names", () => {
  const text = scripts.find(({ name }) => name === "events.js").text;
  for (const name of Object.keys(events)) {
    const [comment] = text.match(new RegExp(`(?:^//.*\n)+(?=export const ${name} =)`, "m")) ?? [];
    assert.ok(comment?.startsWith(`// ${name}: `), `${name} has no comment of its own`);
    for (const does of ["tell", "hear"]) {
      const call = new RegExp(`\\b(?:events\\.)?${name}\\.${does}\\(`);
      const who = users.filter((u) => imports(u, name) && call.test(u.text)).map((u) => u.name);
      assert.ok(who.length > 0, `nobody does ${does} ${name}`);
      for (const script of who) assert.ok(comment.includes(script), `${script} does ${does} ${name}; its comment names others`);
    }
    for (const [script] of comment.matchAll(/[a-z/]+\.js/g)) {
      const user = users.find((u) => u.name === script);
      assert.match(user?.text ?? "", new RegExp(`\\b${name}\\.(?:tell|hear)\\(`), `${script} is named at ${name}`);
    }
  }
});

// imports reports whether a script has an event from events.js.
function imports({ text }, name) {
  const [, what] = text.match(/import (.*) from "\.\.?\/events\.js"/) ?? [];
  return what !== undefined && (what.startsWith("*") || new RegExp(`\\b${name}\\b`).test(what));
}

test("what is told is heard with its detail; what may be prevented says whether it was", () => {
  const page = new EventTarget();
  globalThis.document = page;
  try {
    const heard = [];
    events.sheet.hear((detail) => heard.push(detail));
    assert.equal(events.sheet.tell({ revision: 3 }), true);
    assert.deepEqual(heard, [{ revision: 3 }]);
    events.restored.hear((_, event) => event.preventDefault());
    events.restored.hear((_, event) => heard.push(event.defaultPrevented));
    assert.equal(events.restored.tell(), false);
    assert.equal(heard.at(-1), true);
  } finally {
    delete globalThis.document;
  }
});
