import { rules, rulesText } from '../documents/rules.ts';
import { EXIT, JSON_OPTION, type Command } from './command.ts';

/** Laws and guidance behind the proof: place, edition, date, whether they were read, who checked them. */
export const rulesCommand: Command = {
  name: 'rules',
  usage: '[words ...]',
  summary:
    'List the laws, standards and guidance behind the proof: place, edition, date, and who checked them.',
  options: { json: JSON_OPTION },
  least: 0,
  most: 8,
  examples: ['spraywright rules', 'spraywright rules texas brakes', 'spraywright rules --json'],
  run(args, terminal) {
    const words = args.positionals.map((w) => w.toLowerCase());
    const list = rules().filter((o) => {
      const text = Object.values(o).join(' ').toLowerCase();
      return words.every((w) => text.includes(w));
    });
    if (list.length === 0) {
      terminal.err(`no rule speaks of ${words.join(' and ')}`);
      return EXIT.no;
    }
    terminal.out(
      args.flag('json')
        ? JSON.stringify(list, null, 2)
        : `${rulesText(list)}\n\nLocal law and the product label come first; a rule that nobody has checked is a hint, no permission.`,
    );
    return EXIT.ok;
  },
};
