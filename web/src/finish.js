// What the doors are made and painted in: swatches, and what of it the price is for.
const KINDS = { wood: ['paints', 'timbers'], glass: ['glasses'], metal: ['metals'] };

export class Finish {
  constructor({ palette, words, tell }) {
    Object.assign(this, { palette, words, tell });
    this.chosen = { ...palette.chosen };
    this.watchers = [];
    this.bound = new WeakSet();
    this.offer(palette);
  }

  /** Other doors come with swatches of their own: what was chosen stays where it can be had. */
  offer(palette) {
    const { chosen } = this.palette;
    this.palette = palette;
    for (const kind of Object.keys(KINDS)) {
      if (this.chosen[kind] === chosen[kind] || !this.entry(kind)) this.chosen[kind] = palette.chosen[kind];
    }
    for (const input of document.querySelectorAll('.chip input')) {
      input.checked = this.chosen[input.name] === input.value;
      if (!this.bound.has(input)) input.addEventListener('change', () => this.#choose(input));
      this.bound.add(input);
    }
    this.told();
  }

  #choose(input) {
    if (!input.checked) return;
    this.chosen[input.name] = input.value;
    this.tell(this.words.chosen.replace('{0}', this.entry(input.name).name));
    this.told();
  }

  watch(told) {
    this.watchers.push(told);
    told(this);
  }

  told() {
    for (const told of this.watchers) told(this);
  }

  /** Whether there is such a thing on these doors. */
  has(kind) {
    return KINDS[kind].some((list) => this.palette[list].length);
  }

  entry(kind) {
    return KINDS[kind].flatMap((list) => this.palette[list]).find((e) => e.key === this.chosen[kind]);
  }

  /** The colour that stands for the wood where there is no room for grain. */
  get colour() {
    const wood = this.entry('wood');
    return wood.colour ?? wood.early;
  }

  /** Whether something was chosen that the price is not for. */
  get differs() {
    const { quoted, named_wood: named } = this.palette;
    const other = (kind) => this.has(kind) && quoted[kind].length > 0 && !quoted[kind].includes(this.chosen[kind]);
    return (named && !quoted.wood.length) || Object.keys(KINDS).some(other);
  }

  /** What was chosen, in words: one saying a kind. */
  get said() {
    const { words, palette } = this;
    const wood = this.entry('wood');
    const pieces = {
      wood: (wood.colour ? words['in paint'] : words['in timber']).replace('{0}', wood.name),
      glass: this.has('glass') && words['in glass'].replace('{0}', this.entry('glass').name),
      metal: this.has('metal') && words['in metal'].replace('{0}', this.entry('metal').name),
    };
    return Object.fromEntries(Object.entries(pieces).filter(([, said]) => said).map(([kind, said]) => {
      const open = !palette.quoted[kind].length && !(kind === 'wood' && palette.named_wood);
      return [kind, open ? words['to agree'].replace('{0}', said) : said];
    }));
  }
}
