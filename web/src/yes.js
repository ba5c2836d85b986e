// Saying yes: two acts, both to be seen. First it is said, then it is sent. Nothing leaves the
// page but by the hand of whoever holds it.
const $ = (id) => document.getElementById(id);
const today = () => {
  const now = new Date();
  const two = (n) => String(n).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
};
const filled = (words, ...values) => words.replace(/\{(\d)\}/g, (_, i) => values[i]);

/** The slip: what is read by people, then one line that is read by the maker's tool. */
export function slipText(record, words) {
  const revision = record['revision date']
    ? filled(words['revision of'], record.revision, record['revision date'])
    : filled(words.revision, record.revision);
  return [
    words.head,
    '',
    filled(words.job, record.job),
    ...(record.revision ? [revision] : []),
    ...(record.option ? [filled(words.option, record.option, record.called)] : []),
    filled(words.mark, record.mark),
    filled(words.finish, Object.values(record.finish).join('; ')),
    record['as quoted'] ? words.quoted : words.differs,
    '',
    ...(record.ticks.length ? [words.ticks, ...record.ticks.map((tick) => filled(words.tick, tick)), ''] : []),
    filled(words.name, record.name),
    filled(words.date, record.date),
    '',
    words.whole,
    JSON.stringify(record).replace(/[^\x20-\x7e]/g, (c) => `\\u${c.charCodeAt(0).toString(16).padStart(4, '0')}`),
    '',
  ].join('\n');
}

export class Yes {
  constructor({ job, finish, tell }) {
    Object.assign(this, { job, finish, tell, words: job.words });
    this.record = null;
    this.bound = new WeakSet();
    $('who').addEventListener('input', () => this.#ready());
    $('asking').addEventListener('submit', (event) => {
      event.preventDefault();
      if (!$('say').disabled) this.#say();
    });
    $('not-yet').addEventListener('click', () => this.#notYet());
    $('take-back').addEventListener('click', () => this.#takeBack());
    $('send').addEventListener('click', () => this.#send());
    $('save').addEventListener('click', () => this.#save());
    $('copy').addEventListener('click', () => this.#copy());
    $('send').hidden = !navigator.share;
    finish.watch(() => this.#shown());
    this.ask();
  }

  /** The ticks that the page now asks for. */
  ask() {
    this.ticks = [...document.querySelectorAll('[name="tick"]')];
    for (const tick of this.ticks) {
      if (!this.bound.has(tick)) tick.addEventListener('change', () => this.#ready());
      this.bound.add(tick);
    }
    this.#ready();
  }

  #shown() {
    $('in-finish').textContent = Object.values(this.finish.said).join(', ');
    $('differs').hidden = !this.finish.differs;
    if (this.record) this.#takeBack(); // what was said yes to is no longer what is shown
  }

  #ready() {
    const ticked = this.ticks.every((tick) => tick.checked);
    const named = $('who').value.trim() !== '';
    $('say').disabled = !(ticked && named);
    const why = ticked ? (named ? '' : 'why name') : named ? 'why ticks' : 'why both';
    $('why').textContent = why && this.words[why];
    $('change').textContent = '';
  }

  #say() {
    const { job, finish, words } = this;
    this.record = {
      'stilewright slip': job.slip.format,
      job: job.job,
      revision: job.revision,
      'revision date': job.revision_date,
      ...(job.option ? { option: job.option, called: job.called } : {}),
      fingerprint: job.fingerprint,
      mark: job.mark,
      finish: finish.said,
      'as quoted': !finish.differs,
      ticks: job.ticks,
      name: $('who').value.trim().replace(/\s+/g, ' '),
      date: today(),
      page: job.build,
    };
    const said = job.revision ? filled(words['said yes'], job.revision) : words['said yes bare'];
    const head = job.option ? filled(words['said yes option'], said, job.option, job.called) : said;
    $('done-head').textContent = head;
    $('done-by').textContent = filled(words['said by'], this.record.name, this.record.date);
    $('slip').value = slipText(this.record, job.slip.words);
    $('gone').textContent = '';
    $('asking').hidden = true;
    $('done').hidden = false;
    this.tell(head);
    $('done-head').focus();
  }

  #takeBack() {
    this.record = null;
    $('asking').hidden = false;
    $('done').hidden = true;
    this.tell(this.words['taken back']);
  }

  #notYet() {
    const { job, words } = this;
    const asked = filled(words['change made'], job.revision || '–', job.mark);
    const made = job.option ? filled(words['change option'], job.option, asked) : asked;
    $('change').textContent = `${words.change} ${made}`;
    if (navigator.share) navigator.share({ title: job.job, text: `${job.job}: ${made}` }).catch(() => {});
  }

  get #file() {
    const plain = this.job.job.toLowerCase().normalize('NFKD').replace(/[^a-z0-9]+/g, '-').replace(/^-|-$/g, '');
    return `${plain || 'doors'}-${this.job.revision || 'x'}-${this.job.mark}.slip.txt`.replace(/[^\w.-]/g, '');
  }

  async #send() {
    const text = $('slip').value;
    const file = new File([text], this.#file, { type: 'text/plain' });
    const whole = { title: this.job.job, files: [file] };
    try {
      await navigator.share(navigator.canShare?.(whole) ? whole : { title: this.job.job, text });
      $('gone').textContent = this.words.sent;
    } catch (reason) {
      // whoever shuts the sheet again has sent nothing, and needs no telling
      if (reason.name !== 'AbortError') this.#save();
    }
  }

  #save() {
    const link = document.createElement('a');
    link.href = URL.createObjectURL(new Blob([$('slip').value], { type: 'text/plain' }));
    link.download = this.#file;
    document.body.append(link);
    link.click();
    link.remove();
    setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
    $('gone').textContent = filled(this.words.saved, this.#file);
  }

  async #copy() {
    const slip = $('slip');
    try {
      await navigator.clipboard.writeText(slip.value);
    } catch {
      slip.focus();
      slip.select();
      if (!document.execCommand('copy')) {
        $('gone').textContent = this.words['not copied'];
        return;
      }
    }
    $('gone').textContent = this.words.copied;
  }
}
