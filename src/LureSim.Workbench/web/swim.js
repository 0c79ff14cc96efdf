import { el } from "./scene.js";

// The lure that is looked at, one loop after the other, or stills where nothing may move.
export class Swimmer {
  constructor(above, side, pause, calm) {
    this.above = above;
    this.side = side;
    this.calm = calm;
    this.pauseButton = pause;
    this.paused = calm.matches;
    this.view = null;
    pause.addEventListener("click", () => { this.paused = !this.paused; this.tell(); });
    calm.addEventListener("change", () => { this.paused = calm.matches; this.tell(); });
    this.tell();
    this.frame = -1;
  }

  tell() {
    this.pauseButton.setAttribute("aria-pressed", String(this.paused));
    this.pauseButton.textContent = this.paused ? "Let it swim" : "Pause";
    if (this.view) this.show(this.view);
  }

  show(view) {
    this.view = view;

    // A lure that hangs nose up on a slack line is taller than a swimming one: all of it stays in the frame, at one scale.
    let wide = 0, tall = 0;
    for (const frame of [...view.frames, ...view.ghost]) for (const piece of [...frame.above, ...frame.side]) piece.points.forEach((size, i) => { if (i % 2) tall = Math.max(tall, Math.abs(size)); else wide = Math.max(wide, Math.abs(size)); });
    this.half = Math.max(view.length * 0.62, wide * 1.06, tall * 2.12);
    cancelAnimationFrame(this.request);
    if (!view.frames.length) {
      this.above.replaceChildren();
      this.side.replaceChildren();
      return;
    }
    if (this.paused) { this.stills(); return; }
    // The clock of a frame stands where the frame began, which may be before this moment: time counts from the first frame on.
    let began = null;
    this.frame = -1;
    const tick = now => {
      began ??= now;
      const f = Math.floor((now - began) / 1000 / view.period * view.frames.length) % view.frames.length;
      // While a knob moves the picture of the water has the machine to itself.
      if (f !== this.frame && !document.body.classList.contains("rough")) {
        this.frame = f;
        this.one(this.above, "above", f);
        this.one(this.side, "side", f);
      }
      this.request = requestAnimationFrame(tick);
    };
    this.request = requestAnimationFrame(tick);
  }

  box(svg) {
    const half = this.half;
    svg.setAttribute("viewBox", `${-half} ${-half * 0.5} ${2 * half} ${half}`);
  }

  one(svg, side, f) {
    this.box(svg);
    svg.replaceChildren();
    if (this.view.ghost.length) pieces(el("g", { class: "lure ghost" }, svg), this.view.ghost[0][side]);
    pieces(el("g", { class: "lure" }, svg), this.view.frames[f][side]);
  }

  stills() {
    const count = 5, length = this.half / 0.62;
    for (const [svg, side] of [[this.above, "above"], [this.side, "side"]]) {
      svg.replaceChildren();
      svg.setAttribute("viewBox", `${-length * 0.6} ${-length * 0.4} ${length * 1.2 * count} ${length * 0.8}`);
      for (let i = 0; i < count; i++) {
        const g = el("g", { class: "lure", transform: `translate(${i * length * 1.2} 0)` }, svg);
        pieces(g, this.view.frames[Math.floor(i * this.view.frames.length / count)][side]);
      }
    }
  }
}

// Edges of all pieces first, then their insides: what shows is the outline of the whole.
function pieces(group, list) {
  const shapes = [];
  for (const piece of list) {
    let d = "";
    for (let i = 0; i + 1 < piece.points.length; i += 2) d += (i ? "L" : "M") + piece.points[i] + " " + piece.points[i + 1];
    shapes.push([piece.kind, piece.kind === "w" ? d : d + "Z"]);
  }
  for (const [kind, d] of shapes) if (kind !== "w") el("path", { d, class: "edge-" + kind }, group);
  for (const [kind, d] of shapes) el("path", { d, class: "piece-" + kind }, group);
}
