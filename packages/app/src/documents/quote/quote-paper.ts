import type { Proof } from '@spraywright/engine/rig';
import { pdfOf, stripSheets } from '../paper/pdf.ts';
import { titleBlockOf, quoteSheets } from '../quote-pdf.ts';
import { dateText, parseDay } from '../quote-terms.ts';
import { choiceSheet } from './choice-sheet.ts';
import { proveFrozen, type FrozenQuote } from './frozen-quote.ts';

/**
 * A revision as a PDF: with several options a sheet that sets them side by side, then the sheets of each. Everything
 * comes from the revision, so that the same revision is the same bytes.
 *
 * @throws RangeError when this engine cannot read what was frozen
 */
export async function quotePaper(quote: FrozenQuote): Promise<Uint8Array> {
  const { number, revision, shop, units, date, note } = quote;
  const name = `${number} ${revision}`;
  const proofs = quote.options.map((option) => proveFrozen(quote, option));
  const [first] = proofs;
  if (first === undefined) throw new RangeError(`${name} has no option; a quote has at least one`);
  const several = proofs.length > 1;
  const blockOf = (proof: Proof, document: string) => titleBlockOf(document, proof, { shop, units, date });
  const sheets = proofs.flatMap((proof, i) => {
    const document = several ? `${name}, ${i + 1}` : name;
    const options = {
      shop,
      units,
      date,
      readyDay: quote.options[i]!.summary.readyDay,
      ...(several || note === '' ? {} : { note }),
    };
    return quoteSheets(proof, options, blockOf(proof, document));
  });
  return pdfOf(
    {
      title: `Quote ${name} for ${first.customer}: ${first.title}`,
      subject: `${name}, ${dateText(parseDay(date))}`,
      author: shop.name,
      day: parseDay(date),
    },
    several ? [stripSheets(choiceSheet(quote), blockOf(first, name)), ...sheets] : sheets,
  );
}
