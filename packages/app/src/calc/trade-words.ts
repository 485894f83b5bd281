/** What builders call a thing, and the words by which the sums speak of it. */
const TRADE_WORDS: readonly (readonly [said: string, ours: string])[] = [
  ['gallons per acre', 'dose'],
  ['pounds per acre', 'dose'],
  ['gallons per minute', 'flow'],
  ['center of gravity', 'centre mass'],
  ['centre of gravity', 'centre mass'],
  ['water hammer', 'trigger'],
  ['suction lift', 'suction'],
  ['horsepower', 'power'],
  ['pulley', 'sheave'],
  ['pulleys', 'sheave'],
  ['nozzle', 'tip'],
  ['nozzles', 'tip'],
  ['accumulator', 'pressure tank'],
  ['amps', 'current'],
  ['volts', 'voltage'],
  ['wire', 'cable'],
  ['tire', 'tyre'],
  ['tires', 'tyre'],
  ['gpa', 'dose'],
  ['gpm', 'flow'],
  ['hp', 'power'],
  ['psi', 'pressure'],
  ['rpm', 'speed'],
  ['mph', 'speed'],
];
const SMALL_WORDS = new Set(['a', 'an', 'at', 'by', 'for', 'from', 'in', 'of', 'on', 'per', 'the', 'to']);

/** One thing that is looked for: as it was typed, or as the sums say it. */
export type Wanted = (text: string) => boolean;

/** What words typed into a search look for, each a test of a text in small letters. */
export function wantedBy(words: readonly string[]): readonly Wanted[] {
  let rest = ` ${words.join(' ').toLowerCase().split(/\s+/).join(' ')} `;
  const out: Wanted[] = [];
  for (const [said, ours] of TRADE_WORDS) {
    if (!rest.includes(` ${said} `)) continue;
    rest = rest.replaceAll(` ${said} `, ' ');
    const as = ours.split(' ');
    const typed = new RegExp(`\\b${said}\\b`);
    out.push((text) => typed.test(text) || as.every((word) => text.includes(word)));
  }
  const plain = rest.split(' ').filter((word) => word !== '');
  const telling = plain.filter((word) => !SMALL_WORDS.has(word));
  for (const word of telling.length + out.length > 0 ? telling : plain)
    out.push((text) => text.includes(word));
  return out;
}
