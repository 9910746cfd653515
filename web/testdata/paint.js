// Drag-paints by turns the part of the page's chart that is in view, and a bare
// canvas of the same size that paints the same. Returns the times from frame to
// frame, and the script's own for each move, in ms.
async ({ runs, frames, tool }) => {
  const svg = document.querySelector("svg[data-chart]");
  const data = JSON.parse(document.getElementById("chart-data").textContent);
  const rows = data.rows.map((r, i) => ({
    y: i + 1,
    xs: r.runs.flatMap((run) => Array.from({ length: run.n }, (_, k) => (run.x < 0 ? -1 : run.x - k))).filter((x) => x >= 0).sort((a, b) => a - b),
  }));
  svg.setPointerCapture = () => {}; // the events here have no real pointer to capture
  const view = svg.parentElement;
  view.scrollTop = view.scrollHeight;
  view.scrollLeft = view.scrollWidth;
  await new Promise((done) => setTimeout(done, 300));
  const path = rows.flatMap(({ y, xs }) => (y % 2 ? xs : [...xs].reverse()).map((x) => [y, x])).filter(([y, x]) => {
    const box = view.getBoundingClientRect();
    const p = new DOMPoint(data.left + (x + 0.5) * data.cell_width, data.bottom - (y - 0.5) * data.cell_height).matrixTransform(svg.getScreenCTM());
    return p.x > box.left && p.x < box.right && p.y > box.top && p.y < box.bottom;
  });
  const knitted = svg.classList.contains("knitted");
  const frame = () => new Promise((done) => requestAnimationFrame(done));
  const at = ([y, x]) => new DOMPoint(data.left + (x + 0.5) * data.cell_width, data.bottom - (y - 0.5) * data.cell_height).matrixTransform(svg.getScreenCTM());
  const send = (type, cell) => {
    const p = at(cell);
    svg.dispatchEvent(new PointerEvent(type, { clientX: p.x, clientY: p.y, pointerId: 1, isPrimary: true, button: 0, bubbles: true }));
  };
  const canvas = document.createElement("canvas");
  const box = view.getBoundingClientRect();
  canvas.width = Math.round(box.width);
  canvas.height = Math.round(box.height);
  canvas.style.cssText = "position:fixed;left:0;top:0";
  document.body.append(canvas);
  const pen = canvas.getContext("2d");
  const w = canvas.width / data.width;
  const h = canvas.height / rows.length;
  const dab = ([y, x], colour) => {
    pen.fillStyle = colour;
    if (tool === "symbol") {
      pen.beginPath();
      pen.arc((x + 0.5) * w, canvas.height - (y - 0.5) * h, Math.min(w, h) / 5, 0, 7);
      pen.fill();
    } else {
      pen.fillRect(x * w, canvas.height - y * h, w, h);
    }
  };
  const drag = async (start, step) => {
    const times = [];
    await frame();
    let last = await frame();
    const own = [];
    for (let i = 0; i <= frames; i++) {
      let before;
      requestAnimationFrame(() => { before = performance.now(); });
      const sent = performance.now();
      step(path[(start + i) % path.length], i);
      const took = performance.now() - sent;
      const now = await frame();
      own.push(took + performance.now() - before);
      times.push(now - last);
      last = now;
    }
    return { times: times.slice(1), own: own.slice(1) };
  };
  const pick = (selector) => document.querySelector(selector).click();
  const out = [];
  for (let run = 0; run < runs; run++) {
    const start = Math.floor((run * path.length) / runs);
    canvas.hidden = false;
    const bare = await drag(start, (cell) => dab(cell, run % 2 ? "#B9694A" : "#7FA3C7"));
    canvas.hidden = true;
    pick(tool === "symbol" ? `[data-tool-op="${run % 2 ? "p" : "ktbl"}"]` : `[data-tool-colour="${run % 2 ? "b" : "c"}"]`);
    const chart = await drag(start, (cell, i) => send(i === 0 ? "pointerdown" : "pointermove", cell));
    send("pointerup", path[(start + frames) % path.length]);
    out.push({ bare: bare.times, chart: chart.times, own: chart.own, knitted });
  }
  return out;
}
