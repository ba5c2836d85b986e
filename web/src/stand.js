// Where the client stands, who stands beside the doors, and where they are cut through.
import { spoken } from './figures.js';

export class Stand {
  /** `changed` is called when there is something new to draw, `atPull` when one goes to a pull. */
  constructor({ eye, person, changed, atPull, section, words, unit, span, wide }) {
    const places = [...document.querySelectorAll('[name="place"]')];
    for (const place of places) {
      if (place.value === 'pull' && !eye.frame.pull) place.closest('label').remove();
      else place.addEventListener('change', () => {
        if (!place.checked) return;
        eye.go(place.value);
        if (place.value === 'pull') atPull();
      });
    }
    const beside = document.getElementById('person');
    beside.checked = wide;
    const show = () => {
      person.visible = beside.checked;
      eye.beside(beside.checked);
      changed();
    };
    beside.addEventListener('change', show);
    show();

    const [cut, where, at] = ['cut', 'cut-where', 'cut-at'].map((id) => document.getElementById(id));
    Object.assign(at, { min: span[0], max: span[1], step: 5 });
    at.value = span[0] + (span[1] - span[0]) * 0.62;
    const set = () => {
      where.hidden = !cut.checked;
      at.setAttribute('aria-valuetext', words['cut said'].replace('{0}', spoken(Number(at.value), unit)));
      section.set(cut.checked ? Number(at.value) : null);
      eye.besideCut(cut.checked ? Number(at.value) : null, section.before);
    };
    cut.addEventListener('change', set);
    at.addEventListener('input', set);
  }
}
