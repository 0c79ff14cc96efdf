// Knobs: a slider over steps or a list. The thumb is the hand's: it is never written to while it is held.

export class Knobs {
  constructor(strip, more, rig, turned, released) {
    this.places = { strip, more, rig };
    this.turned = turned;
    this.released = released;
    this.all = new Map();
    this.held = null;
    this.built = "";
    this.later = null;
  }

  // A strip that is the same is left standing, and none is taken from under a hand: it waits until the hand lets go.
  build(knobs, state) {
    const asked = JSON.stringify(knobs);
    this.later = null;
    if (asked === this.built) { this.show(state); return; }
    if (this.held) { this.later = { knobs, state }; return; }
    this.built = asked;
    const focus = document.activeElement && document.activeElement.id;
    for (const place of Object.values(this.places)) place.replaceChildren();
    this.all.clear();
    for (const knob of knobs) {
      const view = knob.kind === "slider" ? this.slider(knob) : this.choice(knob);
      this.all.set(knob.id, view);
      this.places[knob.place].appendChild(view.card);
    }
    this.show(state);
    if (focus) document.getElementById(focus)?.focus();
  }

  at(id, state) {
    const view = this.all.get(id);
    if (!view) return 0;
    const i = state[id] === undefined ? -1 : view.knob.values.indexOf(state[id]);
    return i >= 0 ? i : Math.max(0, view.knob.file);
  }

  show(state) {
    if (this.later) this.later.state = state;
    for (const [id, view] of this.all) {
      if (this.held === id) continue;
      view.show(this.at(id, state));
    }
  }

  // The browser tells of the change after it tells that the hand is gone.
  letGo() {
    this.held = null;
    if (this.later) setTimeout(() => { if (this.later && !this.held) this.build(this.later.knobs, this.later.state); }, 0);
  }

  // To a step; the page's own way of turning a knob, by buttons, keys and grips.
  turn(id, index, release) {
    const view = this.all.get(id);
    if (!view) return;
    const i = Math.max(0, Math.min(view.knob.values.length - 1, index));
    view.show(i);
    this.turned(id, view.knob.values[i], i === view.knob.file);
    if (release) this.released();
  }

  card(knob, control) {
    const card = document.createElement("div");
    card.className = "knob";
    card.dataset.id = knob.id;
    const label = document.createElement("label");
    label.htmlFor = "k-" + knob.id;
    label.textContent = knob.name;
    card.appendChild(label);
    card.appendChild(control);
    return card;
  }

  slider(knob) {
    const input = document.createElement("input");
    input.type = "range";
    input.id = "k-" + knob.id;
    input.min = "0";
    input.max = String(knob.values.length - 1);
    input.step = "1";
    const output = document.createElement("output");
    output.htmlFor = input.id;
    const less = button("−", knob.name + ": one step less");
    const more = button("+", knob.name + ": one step more");
    const row = document.createElement("div");
    row.className = "turn";
    const track = document.createElement("div");
    track.className = "slot";
    track.append(input);
    if (knob.uncheckedFrom < knob.values.length) {
      const hatched = document.createElement("span");
      hatched.className = "unchecked";
      hatched.title = "not checked out here";
      hatched.style.left = 100 * knob.uncheckedFrom / (knob.values.length - 1) + "%";
      track.append(hatched);
    }
    row.append(less, track, more);
    let back = null;
    if (knob.file >= 0) {
      back = document.createElement("button");
      back.type = "button";
      back.className = "file-mark";
      back.textContent = "file: " + knob.labels[knob.file];
      back.addEventListener("click", () => this.turn(knob.id, knob.file, true));
    }
    const head = document.createElement("div");
    head.className = "knob-head";
    const card = this.card(knob, head);
    head.append(output);
    if (back) head.append(back);
    card.append(row);
    const now = () => Number(input.value);
    input.addEventListener("pointerdown", () => { this.held = knob.id; });
    const loose = () => { if (this.held === knob.id) this.letGo(); };
    input.addEventListener("pointerup", loose);
    input.addEventListener("pointercancel", loose);
    input.addEventListener("input", () => {
      tell(now());
      this.turned(knob.id, knob.values[now()], now() === knob.file);
    });
    input.addEventListener("change", () => { loose(); this.released(); });
    input.addEventListener("keydown", event => {
      const far = event.shiftKey ? { ArrowRight: 10, ArrowUp: 10, ArrowLeft: -10, ArrowDown: -10 }[event.key] : 0;
      if (!far) return;
      event.preventDefault();
      this.turn(knob.id, now() + far, true);
    });
    less.addEventListener("click", () => this.turn(knob.id, now() - 1, true));
    more.addEventListener("click", () => this.turn(knob.id, now() + 1, true));
    function tell(i) {
      output.textContent = knob.labels[i];
      input.setAttribute("aria-valuetext", knob.labels[i]);
      if (back) back.hidden = i === knob.file;
      card.classList.toggle("changed", knob.file >= 0 && i !== knob.file);
      card.classList.toggle("beyond", i >= knob.uncheckedFrom);
      less.disabled = i === 0;
      more.disabled = i === knob.values.length - 1;
    }
    return { knob, card, show: i => { input.value = String(i); tell(i); } };
  }

  choice(knob) {
    const select = document.createElement("select");
    select.id = "k-" + knob.id;
    knob.labels.forEach((label, i) => {
      const option = document.createElement("option");
      option.value = String(i);
      option.textContent = label;
      select.appendChild(option);
    });
    const card = this.card(knob, select);
    select.addEventListener("change", () => this.turn(knob.id, Number(select.value), true));
    return { knob, card, show: i => { select.value = String(i); card.classList.toggle("changed", knob.file >= 0 && i !== knob.file); } };
  }
}

export function button(words, name) {
  const made = document.createElement("button");
  made.type = "button";
  made.textContent = words;
  if (name) made.setAttribute("aria-label", name);
  return made;
}
