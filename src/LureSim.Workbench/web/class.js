// Class mode: predict, see, explain. One picture, one knob, one question; the picture is covered until the bets are in.

export class Classroom {
  constructor(room, page, tools) {
    this.room = room;
    this.page = page;
    this.tools = tools;
    this.open = false;
    this.list = [];
    this.step = 0;
    this.lesson = null;
    this.asked = 0;
    addEventListener("keydown", event => this.key(event));

    // After a press with the mouse the keys are the class's again: the space bar uncovers, it does not count one more hand.
    addEventListener("click", event => { if (this.open && event.detail > 0 && document.activeElement?.tagName === "BUTTON") document.activeElement.blur(); });
  }

  enter() {
    if (this.open) { this.leave(); return; }
    this.tools.settle();
    this.open = true;
    this.mine = { state: Object.assign({}, this.page.state), start: this.page.start, pin: this.page.pin };
    document.body.classList.add("class");
    this.room.hidden = false;
    this.tools.send({ kind: "lessons", seq: ++this.page.seq });
  }

  // Back to the page's own water. Its settings are back at once; the picture follows with the water.
  leave(state) {
    if (!this.open) return;
    this.open = false;
    document.body.classList.remove("class", "covered", "blank");
    this.room.hidden = true;
    this.room.replaceChildren();
    this.lesson = null;
    Object.assign(this.page, { start: this.mine.start, pin: this.mine.pin, state: state || this.mine.state });
    this.tools.forget();
    this.asked = ++this.page.seq;
    this.tools.send({ kind: "lesson", seq: this.asked });
  }

  titles(lessons, note) {
    if (!this.open) return;
    this.list = lessons;
    this.note = note || "";
    this.go(0);
  }

  go(step) {
    if (!this.list[step]) return;
    this.step = step;
    this.asked = ++this.page.seq;
    this.tools.send({ kind: "lesson", seq: this.asked, id: this.list[step].id });
    this.cover(true);
  }

  // A step that was asked for before the newest, or that arrives when the class is over, is not opened.
  show(lesson, seq) {
    if (seq !== this.asked) return;
    if (!lesson) { this.tools.look(this.page.state); return; }
    if (!this.open) return;
    this.lesson = lesson;
    this.bets = lesson.answers.map(() => 0);
    this.told = false;
    this.page.pin = null;
    document.body.dataset.show = lesson.show;
    document.body.dataset.knob = lesson.knob;
    this.build();
    this.tools.look(lesson.before);
    this.cover(true);
  }

  build() {
    const { lesson, room } = this;
    room.replaceChildren();
    const bar = make(room, "div", "class-bar");
    this.list.forEach((item, i) => {
      const press = make(bar, "button", "", `${i + 1}`);
      press.type = "button";
      press.title = item.title;
      press.setAttribute("aria-label", `Step ${i + 1}: ${item.title}`);
      press.setAttribute("aria-pressed", String(i === this.step));
      press.addEventListener("click", () => this.go(i));
    });
    const sheet = make(bar, "a", "class-link", "Handout");
    sheet.href = "/handout.pdf";
    sheet.setAttribute("download", "handout.pdf");
    const out = make(bar, "button", "", "Leave the class");
    out.type = "button";
    out.addEventListener("click", () => this.leave());
    if (this.note) make(room, "p", "class-note", this.note);
    if (lesson.refused) {
      make(room, "h1", "class-question", lesson.title);
      make(room, "p", "class-note", lesson.refused);
      return;
    }
    make(room, "h1", "class-question", lesson.question);
    const answers = make(room, "ul", "class-answers");
    this.counts = lesson.answers.map((words, i) => {
      const item = make(answers, "li", "");
      make(item, "span", "words", words);
      const count = make(item, "output", "bets", "0");
      const more = make(item, "button", "", "+");
      more.type = "button";
      more.setAttribute("aria-label", `One more hand for: ${words}`);
      more.addEventListener("click", () => { this.bets[i]++; count.textContent = String(this.bets[i]); });
      return item;
    });
    const keys = make(room, "div", "class-keys");
    this.coverButton = make(keys, "button", "", "Uncover");
    this.tellButton = make(keys, "button", "", "Why?");
    const again = make(keys, "button", "", "Back to the start");
    for (const press of [this.coverButton, this.tellButton, again]) press.type = "button";
    this.coverButton.addEventListener("click", () => this.cover(!this.covered));
    this.tellButton.addEventListener("click", () => this.tell());
    again.addEventListener("click", () => this.again());
    this.why = make(room, "div", "class-why");
    this.why.setAttribute("role", "status");
  }

  cover(covered) {
    this.covered = covered;
    document.body.classList.toggle("covered", covered);
    if (!this.lesson || this.lesson.refused || !this.coverButton) return;
    this.coverButton.textContent = covered ? "Uncover" : "Cover";
    if (!covered && Object.keys(this.lesson.after).length) {
      // What was before stays as a ghost.
      const kept = this.page.lines.get(this.page.focus);
      this.page.pin = { state: this.lesson.before, lines: kept ? [kept] : [] };
      this.tools.look(this.lesson.after);
    }
  }

  tell() {
    this.told = !this.told;
    this.why.replaceChildren();
    this.counts.forEach((item, i) => item.classList.toggle("right", this.told && i === this.lesson.right - 1));
    if (!this.told) return;
    make(this.why, "p", "", this.lesson.because);
    make(this.why, "p", "class-left", "What the model leaves out: " + this.lesson.leavesOut);
  }

  again() {
    this.page.pin = null;
    this.tools.look(this.lesson.before);
    this.cover(true);
  }

  key(event) {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const typing = /^(SELECT|TEXTAREA)$/.test(event.target.tagName) || (event.target.tagName === "INPUT" && event.target.type !== "range");
    if (typing) return;
    if (!this.open) {
      if (event.key.toLowerCase() === "c") { event.preventDefault(); this.enter(); }
      return;
    }
    const key = event.key.toLowerCase();
    if (key >= "1" && key <= "9") this.go(Number(key) - 1);
    else if (key === " " && event.target.tagName !== "BUTTON") { event.preventDefault(); this.cover(!this.covered); }
    else if (key === "b") document.body.classList.toggle("blank");
    else if (key === "r" && this.lesson) this.again();
    else if (key === "g" && this.lesson) {
      this.ghost = this.page.pin || this.ghost;
      this.page.pin = this.page.pin ? null : this.ghost;
      this.tools.draw();
    } else if (key === "escape") this.leave();
    else if ((key === "arrowleft" || key === "arrowright") && this.lesson && event.target.tagName !== "INPUT") {
      event.preventDefault();
      const knobs = this.tools.knobs;
      knobs.turn(this.lesson.knob, knobs.at(this.lesson.knob, this.page.state) + (key === "arrowright" ? 1 : -1), false);
    }
  }
}

function make(parent, name, kind, words) {
  const made = document.createElement(name);
  if (kind) made.className = kind;
  if (words) made.textContent = words;
  parent.appendChild(made);
  return made;
}
