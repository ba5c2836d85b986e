// Numbers as the job writes them: millimetres to the half, inches to the thirty-second.

const THIN = '\u2009';

/** A length in mm as pieces of text; a piece may be a fraction, set as one. */
export function pieces(mm, unit) {
  if (unit !== 'in') {
    const half = Math.round(mm * 2) / 2;
    return [{ text: String(half).replace('-', '\u2212') }];
  }
  const parts = Math.round((Math.abs(mm) / 25.4) * 32);
  const whole = Math.floor(parts / 32);
  let [top, bottom] = [parts % 32, 32];
  while (top && top % 2 === 0) [top, bottom] = [top / 2, bottom / 2];
  const sign = mm < 0 && parts ? '\u2212' : '';
  if (!top) return [{ text: `${sign}${whole}\u2033` }];
  const lead = whole ? [{ text: `${sign}${whole}${THIN}` }] : [{ text: sign }];
  return [...lead, { text: `${top}\u2044${bottom}`, fraction: true }, { text: '\u2033' }];
}

/** The same as plain text, for those who listen. */
export const spoken = (mm, unit) => pieces(mm, unit).map((p) => p.text).join('');

/** Put a length into an element. */
export function setLength(element, mm, unit) {
  element.replaceChildren(
    ...pieces(mm, unit).map(({ text, fraction }) => {
      if (!fraction) return document.createTextNode(text);
      const span = document.createElement('span');
      span.className = 'fraction';
      span.textContent = text;
      return span;
    }),
  );
}
