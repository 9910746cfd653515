// Measures, in the page, real moves of the pointer on its chart and on a bare
// canvas that paints the same: from the event (its own time stamp) until the frame
// that shows it was laid out, painted and handed on, and the script's own time for
// it, in ms. Returns the places to drag over, row after row, and leaves in
// window.paint what the benchmark calls.
({ tool }) => {
  const svg = document.querySelector("svg[data-chart]");
  const data = JSON.parse(document.getElementById("chart-data").textContent);
  const view = svg.parentElement;
  view.scrollTop = view.scrollHeight;
  view.scrollLeft = view.scrollWidth;
  const box = view.getBoundingClientRect();
  const matrix = svg.getScreenCTM();
  const places = data.rows.flatMap((row, i) => {
    const y = i + 1;
    const xs = row.runs.flatMap((run) => Array.from({ length: run.n }, (_, k) => (run.x < 0 ? -1 : run.x - k))).filter((x) => x >= 0).sort((a, b) => a - b);
    return (y % 2 ? xs : xs.reverse()).map((x) => new DOMPoint(data.left + (x + 0.5) * data.cell_width, data.bottom - (y - 0.5) * data.cell_height).matrixTransform(matrix));
  }).filter((p) => p.x > box.left + 1 && p.x < box.right - 1 && p.y > box.top + 1 && p.y < box.bottom - 1);

  window.paint?.canvas.remove();
  const canvas = document.createElement("canvas");
  Object.assign(canvas, { width: Math.round(box.width), height: Math.round(box.height), hidden: true });
  canvas.style.cssText = `position:fixed;left:${box.left}px;top:${box.top}px;touch-action:none`;
  document.body.append(canvas);
  const pen = canvas.getContext("2d");
  const [w, h] = [data.cell_width * matrix.a, data.cell_height * matrix.d];
  let colour = "";
  const dab = (event) => {
    if (event.buttons !== 1) return;
    const [x, y] = [Math.floor(event.offsetX / w) * w, Math.floor(event.offsetY / h) * h];
    pen.fillStyle = colour;
    if (tool === "symbol") {
      pen.beginPath();
      pen.arc(x + w / 2, y + h / 2, w / 5, 0, 7);
      pen.fill();
    } else pen.fillRect(x, y, w, h);
  };
  canvas.addEventListener("pointerdown", dab);
  canvas.addEventListener("pointermove", dab);

  let moves = [];
  let move;
  const shown = new MessageChannel();
  const open = []; // moves whose frame is being made
  shown.port1.onmessage = () => {
    for (const m of open.splice(0)) m.frame = performance.now() - m.stamp;
  };
  const frame = window.paint?.frame ?? window.requestAnimationFrame.bind(window);
  window.requestAnimationFrame = (f) => frame((now) => {
    const begun = performance.now();
    f(now);
    if (move) move.own += performance.now() - begun;
  });
  const away = new AbortController();
  window.paint?.away.abort();
  window.addEventListener("pointermove", (event) => {
    move = { stamp: event.timeStamp, begun: performance.now(), own: 0, frame: 0 };
    moves.push(move);
  }, { capture: true, signal: away.signal });
  window.addEventListener("pointermove", () => {
    move.own += performance.now() - move.begun;
    const made = move;
    frame(() => { // after the chart's own, and handled after the frame
      open.push(made);
      shown.port2.postMessage("");
    });
  }, { signal: away.signal });
  const stroke = (bare, turn) => {
    canvas.hidden = !bare;
    colour = turn % 2 ? "#B9694A" : "#7FA3C7";
    moves = [];
    move = undefined;
    document.querySelector(tool === "symbol" ? `[data-tool-op="${turn % 2 ? "p" : "ktbl"}"]` : `[data-tool-colour="${turn % 2 ? "b" : "c"}"]`).click();
  };
  const taken = () => moves.filter((m) => m.frame > 0).map(({ own, frame: f }) => ({ own, frame: f }));
  window.paint = { canvas, frame, away, stroke, taken, knitted: () => svg.classList.contains("knitted") };
  return places.map(({ x, y }) => ({ X: x, Y: y }));
}
