// The workspace of one mitt: measure form, thread between its views, chart.
import { startMeasure } from "./measure.js";
import { startThread } from "./thread.js";
import "./chart/main.js";

startMeasure(document);
startThread(document);

// A link to a field that is folded away opens what it lies in.
document.addEventListener("click", (event) => {
  const link = event.target.closest?.("a[data-opens]");
  const field = link && document.getElementById(link.getAttribute("href").slice(1));
  if (!field) return;
  event.preventDefault();
  for (let up = field.closest("details"); up; up = up.parentElement.closest("details")) up.open = true;
  field.focus();
});
