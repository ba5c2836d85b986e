// Sizes in plain words: touch one and it stands in the picture as a chalk line. Small ones that
// stand far apart are walked to, one after the other.
const LOOK = 2600; // ms at each
const BACK = 900;

export class Sizes {
  constructor({ facts, leaves, instant }) {
    Object.assign(this, { leaves, instant });
    this.shown = null;
    this.bound = new WeakSet();
    this.list(facts);
  }

  /** The sizes that the page now lists; one that was shown is shown again, as it is now. */
  list(facts) {
    const label = this.shown && this.facts[Number(this.shown.dataset.fact)].label;
    this.show(null);
    this.facts = facts;
    this.buttons = [...document.querySelectorAll('[data-fact]')];
    for (const button of this.buttons) {
      if (!this.bound.has(button)) button.addEventListener('click', () => this.show(this.shown === button ? null : button));
      this.bound.add(button);
      button.setAttribute('aria-pressed', 'false');
    }
    const again = label && this.buttons.find((button) => facts[Number(button.dataset.fact)].label === label);
    if (again) this.show(again);
  }

  /** From now on there is a picture to draw in and an eye to walk. */
  pictured(chalk, eye) {
    Object.assign(this, { chalk, eye });
  }

  show(button) {
    clearTimeout(this.walk);
    if (this.walked) {
      this.eye?.look(null);
      this.walked = false;
    }
    this.shown = button;
    for (const one of this.buttons ?? []) one.setAttribute('aria-pressed', String(one === button));
    if (!button) {
      this.chalk?.show([]);
      return;
    }
    const fact = this.facts[Number(button.dataset.fact)];
    for (const [name, far] of Object.entries(fact.opened)) {
      this.leaves.glide(this.leaves.named(name), far);
    }
    this.chalk?.show(fact.chalk);
    if (fact.walks && this.eye) this.#walk(fact, 0);
  }

  #walk(fact, i) {
    const line = fact.chalk[i];
    this.walked = Boolean(line);
    this.eye.look(line ? line.start.map((v, k) => (v + line.end[k]) / 2) : null);
    if (line) this.walk = setTimeout(() => this.#walk(fact, i + 1), i || this.instant ? LOOK : LOOK + BACK);
  }
}
