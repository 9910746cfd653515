// The workspace of one mitt: measure form, thread between its views, chart.
import { startMeasure } from "./measure.js";
import { startThread } from "./thread.js";
import { settled } from "./chart/main.js";

startMeasure(document, settled);
startThread(document);

// A link to a field that is folded away opens what it lies in, on this page or
// on the one that it leads to.
document.addEventListener("click", (event) => {
  const link = event.target.closest?.("a[data-opens]");
  if (link && reach(link.getAttribute("href").slice(1))) event.preventDefault();
});
const arrive = () => location.hash.length > 1 && reach(decodeURIComponent(location.hash.slice(1)));
window.addEventListener("hashchange", arrive);
arrive();

function reach(id) {
  const field = document.getElementById(id);
  if (!field) return false;
  for (let up = field.closest("details"); up; up = up.parentElement.closest("details")) up.open = true;
  (field.matches("details") ? field.querySelector("summary") : field).focus();
  field.select?.();
  if (field.matches('details[name="slip"]')) {
    scrollTo(0, 0); // the ladder is seen as a whole, as far as it can be
    field.querySelector(".slip").scrollIntoView({ block: "nearest" });
  }
  return true;
}
