// The workspace of one mitt: measure form, thread between its views, chart.
import { startMeasure } from "./measure.js";
import { toLadder, toNumber } from "./slips.js";
import { startThread } from "./thread.js";
import { settled } from "./chart/main.js";

startMeasure(document, settled);
startThread(document);

// A link to a field that is folded away opens what it lies in, on this page or
// on the one that it leads to.
document.addEventListener("click", (event) => {
  const link = event.target.closest?.("a[data-opens]");
  if (link && link.pathname === location.pathname && reach(link.hash.slice(1))) event.preventDefault();
});
const arrive = () => location.hash.length > 1 && reach(decodeURIComponent(location.hash.slice(1)));
window.addEventListener("hashchange", arrive);
arrive();

function reach(id) {
  const field = document.getElementById(id);
  if (!field) return false;
  if (id === "ladder") return toLadder(document);
  if (field.matches('.ladder .number, details[name="slip"]')) return toNumber(document, field);
  for (let up = field.closest("details"); up; up = up.parentElement.closest("details")) up.open = true;
  const to = field.matches("details") ? field.querySelector("summary") : (field.matches(".number") && field.querySelector("input[data-keep]")) || field;
  to.focus();
  to.select?.();
  return true;
}
