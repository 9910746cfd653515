// Where the cells of a chart lie in the frame through which it is seen, in px.

export class Where {
  // svg and frame are the boxes of the drawing and of its frame on the window,
  // width and height the room in the frame, view the drawing's own coordinates,
  // data the chart, and needle the box of the needle.
  constructor({ svg, frame, width, height, view, data, needle }) {
    const scale = svg.width / view.width;
    this.left = svg.left - frame.left + (data.left - view.x) * scale; // of the first column
    this.foot = svg.top - frame.top + (data.bottom - view.y) * scale; // of the lowest row
    this.w = data.cell_width * scale;
    this.h = data.cell_height * scale;
    this.width = width;
    this.height = height;
    this.off = frame.left - needle.left; // from the needle to the frame
    this.room = needle.width;
    this.rows = data.rows.length;
    this.columns = data.width;
  }

  // x and y return the left edge of a column and the upper edge of a row.
  x(column) {
    return this.left + column * this.w;
  }

  y(row) {
    return this.foot - row * this.h;
  }

  // low and high are the first and the last row in view.
  get low() {
    return Math.max(1, Math.floor((this.foot - this.height) / this.h) + 1);
  }

  get high() {
    return Math.min(this.rows, Math.ceil(this.foot / this.h));
  }

  // from and to are how far the view reaches, in columns and parts of one.
  get from() {
    return Math.max(0, -this.left / this.w);
  }

  get to() {
    return Math.min(this.columns, (this.width - this.left) / this.w);
  }

  same(other) {
    return other !== undefined && Object.keys(this).every((key) => this[key] === other[key]);
  }
}
