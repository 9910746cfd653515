// The workspace of one mitt: measure form, thread between its views, chart.
import { startMeasure } from "./measure.js";
import { startThread } from "./thread.js";
import "./chart/main.js";

startMeasure(document);
startThread(document);
