// One frame of a chart. What is asked for until then is done together: first
// everything is read, then everything is written, so that the browser lays the
// page out once.

export class Frame {
  // next calls a function in the next frame.
  constructor(next = (f) => requestAnimationFrame(f)) {
    this.next = next;
    this.jobs = []; // in the order in which they are done
    this.asked = new Set();
  }

  // add takes up a job { read, write }, and returns the function that asks for it.
  // write is given what read returned.
  add(job) {
    this.jobs.push(job);
    return () => {
      if (this.asked.size === 0) this.next(() => this.run());
      this.asked.add(job);
    };
  }

  run() {
    const jobs = this.jobs.filter((job) => this.asked.has(job));
    this.asked.clear(); // what is asked for from here on is for the frame after
    const read = jobs.map((job) => job.read?.());
    jobs.forEach((job, i) => job.write(read[i]));
  }
}

// changes returns a function that reports whether anything in a list differs from
// what it was given the last time.
export function changes() {
  let last = [];
  return (...now) => {
    const before = last;
    last = now;
    return now.length !== before.length || now.some((value, i) => value !== before[i]);
  };
}
