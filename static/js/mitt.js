// The workspace of one mitt: measure form, thread between its views.
import { startMeasure } from "./measure.js";
import { startThread } from "./thread.js";

startMeasure(document);
startThread(document);
