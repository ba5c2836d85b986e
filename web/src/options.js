// Several options of one job on one page: what is written of the others is laid by, and comes
// into the place of what is shown when one of them is asked for.
const MODEL = 'model';

export class Options {
  /**
   * `job` holds what is told of the option that is shown; `changed` is called with its letter
   * when that has become another.
   */
  constructor({ job, changed }) {
    Object.assign(this, { job, changed });
    const others = job.options ?? [];
    const own = Object.fromEntries(Object.keys(others[0] ?? {}).map((key) => [key, job[key]]));
    this.first = job.option;
    this.told = new Map([[job.option, own], ...others.map((one) => [one.option, one])]);
    this.places = [...document.querySelectorAll('[data-part]')];
    this.written = new Map();
    for (const laid of document.querySelectorAll('template[data-option]')) {
      const parts = [...laid.content.children].map((part) => [part.dataset.part, [...part.childNodes]]);
      this.written.set(laid.dataset.option, new Map(parts));
    }
    for (const choice of document.querySelectorAll('[name="option"]')) {
      choice.checked = choice.value === job.option;
      choice.addEventListener('change', () => choice.checked && this.show(choice.value));
    }
  }

  /** What is told of each, in no order that matters. */
  get all() {
    return this.told.size > 1 ? [...this.told.values()] : [this.job];
  }

  /** The model of the option that is shown, as the page carries it. */
  get model() {
    const { option } = this.job;
    return document.getElementById(option === this.first ? MODEL : `${MODEL}-${option}`).textContent;
  }

  show(letter) {
    const { job, places, written } = this;
    if (letter === job.option) return;
    const coming = written.get(letter);
    written.set(job.option, new Map(places.map((place) => [place.dataset.part, [...place.childNodes]])));
    for (const place of places) place.replaceChildren(...coming.get(place.dataset.part));
    Object.assign(job, this.told.get(letter));
    this.changed(letter);
  }
}
