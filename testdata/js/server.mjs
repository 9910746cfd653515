// A chart with the outbox of its strokes and a server that answers as told.
import { History } from "../../static/js/chart/history.js";
import { Model } from "../../static/js/chart/model.js";
import { Strokes } from "../../static/js/chart/strokes.js";
import { page as pageOf } from "./cases.mjs";

export const page = { ...pageOf("nothing"), marks: [] };
export const edit = (round, value) => ({ section: "gusset", round, column: "B2", layer: "stitch", value });
export const settle = () => new Promise((done) => setImmediate(done));

// setUp has no clock: pauses are kept. store is what the browser kept, file
// what the page tells of its file.
export function setUp(answers, store = { value: [] }, file = {}) {
  const sent = [];
  const heard = [];
  const pauses = [];
  const model = new Model(page);
  let history;
  let keys = 0;
  const outbox = new Strokes({
    href: "/chart", revision: 4, key: () => `k${++keys}`, ...file,
    send: async (_, body) => {
      sent.push(body);
      const answer = answers.shift();
      if (answer === undefined) throw new TypeError("away");
      return answer;
    },
    keep: {
      get: () => structuredClone(store.value),
      put: (r) => store.value.push(structuredClone(r)),
      drop: (key) => { store.value = store.value.filter((r) => r.key !== key); },
    },
    later: (f, ms) => pauses.push({ f, ms }),
    on: (what, detail) => {
      heard.push(what);
      if (what === "applied") history.applied(detail);
      if (what === "refused") history.refused(detail);
      if (what === "heard") history.heard(detail);
    },
  });
  history = new History(model, outbox, () => {});
  return { sent, heard, pauses, store, model, outbox, history };
}

export const ok = (revision, rest) => ({ status: 200, reply: { revision, edits: [], between: [], can_undo: true, can_redo: false, ...rest } });
