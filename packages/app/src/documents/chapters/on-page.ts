import { readFileSync } from 'node:fs';
import { FONTS, PALETTES } from '@spraywright/engine/drawings';
import { originWords } from '../origin-words.ts';
import { CAUTION_SIGN, partCircles, stepSquare } from './on-paper.ts';
import type { Block, Chapter } from './chapter.ts';

/** What stands over the chapters of a page. */
export interface PageHead {
  readonly title: string;
  readonly under: string;
  readonly foot: string;
}

/** Chapters as one file that opens on a phone without a network: faces, drawings and text are all inside it. */
export function chaptersOnPage({ title, under, foot }: PageHead, chapters: readonly Chapter[]): string {
  const index = chapters.map((c) => `<li><a href="#${c.id}">${escaped(c.title)}</a></li>`).join('');
  const body = chapters
    .map(
      (c) =>
        `<section id="${c.id}"><h2>${escaped(c.title)}</h2>${c.blocks.map(blockOnPage).join('')}</section>`,
    )
    .join('\n');
  return `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; font-src data:; img-src data:">
<title>${escaped(title)}</title><style>${faces()}${STYLE}</style></head>
<body><header><h1>${escaped(title)}</h1><p>${escaped(under)}</p></header>
<nav aria-label="Chapters"><ol>${index}</ol></nav>
<main>
${body}
</main><footer><p>${escaped(foot)}</p></footer></body></html>
`;
}

function blockOnPage(block: Block): string {
  switch (block.kind) {
    case 'note':
      return `<p>${escaped(block.text)}</p>`;
    case 'head':
      return `<h3>${escaped(block.text)}</h3>`;
    case 'warning':
      return `<p class="warning">${hidden(CAUTION_SIGN)}<span>${escaped(block.text)}</span></p>`;
    case 'steps':
      return `<ol class="steps">${block.steps
        .map(
          ({ text, parts, source }, i) =>
            `<li>${hidden(stepSquare(i + 1))}<span>${escaped(text)} <small>${escaped(source)}</small></span>${
              parts.length === 0
                ? ''
                : `<span class="rings" role="img" aria-label="${parts.length > 1 ? 'parts' : 'part'} ${parts.join(', ')}">${hidden(partCircles(parts))}</span>`
            }</li>`,
        )
        .join('')}</ol>`;
    case 'table':
      return tableOnPage(block);
    case 'drawing':
      return [block, ...(block.beside === undefined ? [] : [block.beside])]
        .map((d) => `<figure role="img" aria-label="${escaped(d.words)}">${hidden(d.svg)}</figure>`)
        .join('');
    case 'photos':
      return block.photos
        .map(
          ({ image, words }) =>
            `<figure><img src="${escaped(image)}" alt=""><figcaption>${escaped(words)}</figcaption></figure>`,
        )
        .join('');
    case 'cautions':
      return `<ul class="cautions">${block.cautions
        .map(
          ({ caution }) =>
            `<li><b>${escaped(caution.danger)}</b> ${escaped(caution.act)} <small>Source: ${escaped(originWords(caution.origin))}.</small></li>`,
        )
        .join('')}</ul>`;
  }
}

/** Letters of a cell that is not broken. */
const SHORT_CELL = 12;

function tableOnPage({ captions, rows, words, strong }: Extract<Block, { kind: 'table' }>): string {
  // A short word column keeps its figure and unit on one line.
  const short = (i: number) => rows.every((r) => r[i]!.length <= SHORT_CELL);
  const kind = (i: number) =>
    i >= words ? ` class="${i === strong ? 'figure strong' : 'figure'}"` : short(i) ? ' class="short"' : '';
  const row = (cells: readonly string[], name: 'th' | 'td') =>
    `<tr>${cells
      .map((c, i) => `<${name}${name === 'th' ? ' scope="col"' : ''}${kind(i)}>${escaped(c)}</${name}>`)
      .join('')}</tr>`;
  return `<div class="scroll" tabindex="0" role="region" aria-label="${escaped(captions.join(', '))}"><table><thead>${row(captions, 'th')}</thead><tbody>${rows
    .map((r) => row(r, 'td'))
    .join('')}</tbody></table></div>`;
}

/** A drawing whose meaning is said beside it. */
function hidden(svg: string): string {
  return svg.replace(/^<svg/, '<svg aria-hidden="true"');
}

export function escaped(text: string): string {
  return text
    .replace(/<=/g, '≤')
    .replace(/>=/g, '≥')
    .replace(/[&<>"]/g, (c) => ({ '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' })[c]!);
}

/** The typefaces of the sheet inside a page. */
export function faces(): string {
  const face = (name: string, file: string, more = '') => {
    // From this file's place in `src/documents/chapters` or `dist/documents/chapters`.
    const bytes = readFileSync(new URL(`../../../assets/fonts/${file}.woff2`, import.meta.url));
    return `@font-face{font-family:'${name}';src:url(data:font/woff2;base64,${bytes.toString('base64')}) format('woff2');font-weight:400 720;${more}}`;
  };
  return [
    face(FONTS.semi, 'semi'),
    face(FONTS.condensed, 'condensed'),
    face(
      FONTS.signs,
      'signs',
      'size-adjust:93%;ascent-override:90%;descent-override:30%;line-gap-override:0%',
    ),
  ].join('\n');
}

const { ink, ink2, rule, liquid } = PALETTES.print;
const STYLE = `
html{color:${ink};background:#fff;font:460 17px/1.35 '${FONTS.semi}','${FONTS.signs}','Arial Narrow',sans-serif;font-variant-numeric:tabular-nums lining-nums;text-rendering:geometricPrecision;-webkit-text-size-adjust:100%}
body{margin:0 auto;max-width:46rem;padding:0 16px 48px}
h1{font-size:25px;line-height:1.2;font-weight:640;margin:20px 0 4px}
h2{font:640 14px/1.3 '${FONTS.condensed}',sans-serif;letter-spacing:.045em;text-transform:uppercase;border-top:1.8px solid ${ink};padding-top:12px;margin:28px 0 8px}
h3{font-size:17px;font-weight:640;margin:18px 0 4px}
p{margin:6px 0}small,header p,footer p{color:${ink2};font-size:14px}
nav ol{list-style:none;margin:12px 0 0;padding:0;columns:2}nav li{break-inside:avoid}nav a{display:flex;align-items:center;min-height:44px;line-height:1.2;color:${liquid}}
a:focus-visible,.scroll:focus-visible{outline:2.4px solid ${ink}}
.scroll{overflow-x:auto}table{border-collapse:collapse;width:100%;font:500 16px/1.3 '${FONTS.condensed}','${FONTS.signs}',sans-serif}
th{color:${ink2};font-size:13.5px;font-weight:480;text-align:left;vertical-align:bottom}th,td{padding:6px 10px 6px 0;border-bottom:.8px solid ${rule}}td{vertical-align:top}
.figure{text-align:right;white-space:nowrap}.short{white-space:nowrap}th.figure,th.short{white-space:normal}.strong{font-weight:680}
.steps,.cautions{list-style:none;margin:6px 0;padding:0}.steps li{display:flex;gap:10px;align-items:flex-start;padding:7px 0}
.steps li>svg{flex:none;width:22px;height:22px}.steps li>span:first-of-type{flex:1}.rings{flex:none}.rings svg{height:auto;max-width:96px}
.cautions li{padding:6px 0}.warning{display:flex;gap:10px;align-items:center;font-weight:640}.warning svg{flex:none;width:28px;height:26px}
figure{margin:8px 0}figure img{max-width:100%;height:auto;display:block}figcaption{font-size:14px}figure svg{max-width:100%;height:auto}
@media print{nav{display:none}section{break-inside:auto}}
`;
