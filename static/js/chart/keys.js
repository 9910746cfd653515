// The chart by keyboard: arrows move the cursor as it is seen on paper, Enter
// or the space bar paints, Backspace takes a cell back to the plan.

// act gives what a key asks for: { move }, { paint }, { erase }, { undo },
// { redo }, { drop } or undefined.
export function act(event) {
  const command = event.ctrlKey || event.metaKey;
  if (command && event.key.toLowerCase() === "z") return event.shiftKey ? { redo: true } : { undo: true };
  if (command || event.altKey) return undefined;
  switch (event.key) {
    case "ArrowLeft": return { move: [0, -1] };
    case "ArrowRight": return { move: [0, 1] };
    case "ArrowUp": return { move: [1, 0] };
    case "ArrowDown": return { move: [-1, 0] };
    case "Home": return { move: [0, -Infinity] };
    case "End": return { move: [0, Infinity] };
    case "Enter":
    case " ": return { paint: true };
    case "Backspace":
    case "Delete": return { erase: true };
    case "u": return { undo: true };
    case "r": return { redo: true };
    case "Escape": return { drop: true };
  }
  return undefined;
}

// moved is the cell that a move leads to: it stays within the chart, and
// within the cells of the round.
export function moved(model, { round, x }, [up, right]) {
  const to = Math.min(Math.max(round + up, 1), model.rounds);
  const xs = model.row(to).cells.map((c) => c.x);
  const [low, high] = [Math.min(...xs), Math.max(...xs)];
  return { round: to, x: Math.min(Math.max(x + right, low), high) };
}
