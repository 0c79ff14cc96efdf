// Class mode comes with the lessons.
export class Classroom {
  constructor(room, page, tools) {
    this.open = false;
  }

  enter() {
  }
}
