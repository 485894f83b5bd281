// Reads the doc comment of a function: the convention is in CONTRIBUTING.md, what is read becomes METHODS.md and
// the list of calculations.

/** @returns {{ purpose: string, tags: { tag: string, text: string }[] }} */
function splitComment(comment) {
  const lines = comment
    .replace(/^\/\*\*/, '')
    .replace(/\*\/$/, '')
    .split('\n')
    .map((line) => line.replace(/^\s*\*? ?/, '').trimEnd());
  const intro = [];
  const tags = [];
  for (const line of lines) {
    const tagged = /^@(\w+)\s*(.*)$/.exec(line);
    if (tagged) tags.push({ tag: tagged[1], text: tagged[2] });
    else if (tags.length > 0) tags.at(-1).text = `${tags.at(-1).text} ${line.trim()}`.trim();
    else intro.push(line);
  }
  const [purpose = '', ...more] = intro
    .join('\n')
    .trim()
    .split(/\n\s*\n/)
    .map((paragraph) => paragraph.replace(/\s+/g, ' '));
  return { purpose, more, tags };
}

const RANGE = /^(-?[\d.]+(?:e-?\d+)?)?\.\.(-?[\d.]+(?:e-?\d+)?)?$/i;

/**
 * "volume flow [m3/s] 0..10" gives meaning, unit and range.
 *
 * @returns {{ meaning: string, unit?: string, kind?: string, choices?: string[], min?: number, max?: number, trailing?: string }}
 */
function readMeaning(text) {
  const found = /^(.*?)\s*\[([^[\]]+)\]\s*(.*)$/.exec(text);
  if (!found) return { meaning: text };
  const [, meaning, bracket, rest] = found;
  const out = { meaning };
  const list = /^list of (.+)$/.exec(bracket);
  const unit = list ? list[1] : bracket;
  if (bracket === 'yes/no') out.kind = 'flag';
  else if (bracket === 'text') out.kind = 'text';
  else if (/^one of /.test(bracket)) {
    out.kind = 'choice';
    out.choices = bracket.slice(7).split(/\s*,\s*/);
    // "one of none, single or double" is written as people speak.
    const last = out.choices.at(-1).split(' or ');
    if (last.length === 2 && out.choices.length > 1) out.choices.splice(-1, 1, ...last);
  } else out.kind = list ? 'list' : 'number';
  if (out.kind === 'number' || out.kind === 'list') out.unit = unit;
  if (rest === '') return out;
  const range = RANGE.exec(rest.replace(/[;,]$/, ''));
  if (!range) return { ...out, trailing: rest };
  if (range[1] !== undefined) out.min = Number(range[1]);
  if (range[2] !== undefined) out.max = Number(range[2]);
  out.ranged = true;
  return out;
}

/** The whole comment in parts; `params` and `results` keep the order they are written in. */
export function readComment(comment) {
  const { purpose, more, tags } = splitComment(comment);
  const all = (name) => tags.filter(({ tag }) => tag === name).map(({ text }) => text);
  const named = (text) => {
    const [, name = '', rest = ''] = /^(\S+)\s*(.*)$/.exec(text) ?? [];
    return { name, ...readMeaning(rest) };
  };
  return {
    purpose,
    more,
    formula: all('formula').join('; '),
    params: all('param').map(named),
    returns: all('returns').map(readMeaning)[0],
    results: all('result').map(named),
    valid: all('valid').join(' '),
    source: all('source').join('; '),
    throws: all('throws').join(' '),
  };
}
