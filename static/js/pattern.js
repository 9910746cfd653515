// Pattern: the form of the mitt, and the pages that are printed.
import "./mitt.js";
import "./print.js";
