// The four tabs and the tray they open. On a phone the tray takes the strip's place and shuts
// again; where there is room for a column one of them is always open.
const WIDE = '(min-width: 900px)';
const FIRST = 'sizes'; // the longest list, and what one must know

export class Tray {
  /** `shown` is told the name of what is open, or null. */
  constructor(shown) {
    this.shown = shown;
    this.tabs = [...document.querySelectorAll('#tabs [role="tab"]')];
    this.panels = new Map(this.tabs.map((tab) => [tab, document.getElementById(tab.getAttribute('aria-controls'))]));
    this.wide = matchMedia(WIDE);
    this.open = null;
    this.tabs.forEach((tab, i) => {
      tab.addEventListener('click', () => this.show(this.open === tab && !this.wide.matches ? null : tab));
      tab.addEventListener('keydown', (event) => this.#keys(event, i));
    });
    addEventListener('keydown', (event) => {
      if (event.key !== 'Escape' || this.wide.matches || !this.open) return;
      const tab = this.open;
      this.show(null);
      if (document.activeElement === document.body) tab.focus();
    });
    this.wide.addEventListener('change', () => this.show(this.open));
    this.show(null);
  }

  get name() {
    return this.open ? this.panels.get(this.open).id : null;
  }

  show(wanted) {
    const tab = wanted ?? (this.wide.matches ? this.tabs.find((one) => this.panels.get(one).id === FIRST) : null);
    const before = this.open;
    this.open = tab;
    document.documentElement.toggleAttribute('data-tray', Boolean(tab));
    for (const one of this.tabs) {
      one.setAttribute('aria-selected', String(one === tab));
      one.tabIndex = one === tab || (!tab && one === this.tabs[0]) ? 0 : -1;
      this.panels.get(one).hidden = one !== tab;
    }
    if (tab !== before) {
      document.getElementById('drawer').scrollTop = 0;
      document.getElementById('tray').scrollTop = 0;
      this.shown(this.name);
    }
  }

  #keys(event, i) {
    const to = { ArrowRight: i + 1, ArrowLeft: i - 1, Home: 0, End: this.tabs.length - 1 }[event.key];
    if (to === undefined) return;
    event.preventDefault();
    const tab = this.tabs[(to + this.tabs.length) % this.tabs.length];
    tab.focus();
    this.show(tab);
  }
}
