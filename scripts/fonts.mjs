// Cuts the project's typefaces from their packages: variable WOFF2 for the page, static TrueType for papers.
// Run by hand after a font package changes; what it writes is committed.
import { readFileSync, writeFileSync, copyFileSync } from 'node:fs';
import { join } from 'node:path';
import subsetFont from 'subset-font';
import { root } from './ensure.mjs';

const source = (name, slice) =>
  readFileSync(join(root, `node_modules/@fontsource-variable/${name}/files/${name}-${slice}-normal.woff2`));
const out = join(root, 'packages/app/assets/fonts');
const put = (name, bytes) => {
  writeFileSync(join(out, name), bytes);
  console.log(name, bytes.length);
};

// The family is cut without these signs, so they come from a face of their own, last in every stack.
const SIGNS = '≥≤≈√−∞';
const GREEK = 'ΔΩαβγδηθλμνπρστφω';
const LATIN =
  Array.from({ length: 95 }, (_, i) => String.fromCharCode(32 + i)).join('') +
  Array.from({ length: 96 }, (_, i) => String.fromCharCode(160 + i)).join('') +
  '–—‘’“”„…•′″−ŒœŠšŽžŸ€';

const FAMILIES = [
  ['sofia-sans-semi-condensed', 'semi', [460, 640]],
  ['sofia-sans-condensed', 'condensed', [500, 660]],
];
for (const [name, short, weights] of FAMILIES) {
  const latin = source(name, 'latin-wght');
  const greek = source(name, 'greek-wght');
  put(
    `${short}.woff2`,
    await subsetFont(latin, LATIN, {
      targetFormat: 'woff2',
      variationAxes: { wght: { min: 400, max: 720 } },
    }),
  );
  put(
    `${short}-greek.woff2`,
    await subsetFont(greek, GREEK, {
      targetFormat: 'woff2',
      variationAxes: { wght: { min: 400, max: 720 } },
    }),
  );
  for (const wght of weights) {
    put(
      `${short}-${wght}.ttf`,
      await subsetFont(latin, LATIN, { targetFormat: 'sfnt', variationAxes: { wght } }),
    );
    put(
      `${short}-greek-${wght}.ttf`,
      await subsetFont(greek, GREEK, { targetFormat: 'sfnt', variationAxes: { wght } }),
    );
  }
}
const math = source('open-sans', 'math-standard');
put('signs.woff2', await subsetFont(math, SIGNS, { targetFormat: 'woff2', variationAxes: { wdth: 80 } }));
for (const wght of [460, 640])
  put(
    `signs-${wght}.ttf`,
    await subsetFont(math, SIGNS, { targetFormat: 'sfnt', variationAxes: { wdth: 80, wght } }),
  );
copyFileSync(
  join(root, 'node_modules/@fontsource-variable/sofia-sans-condensed/LICENSE'),
  join(out, 'LICENSE-sofia-sans.txt'),
);
copyFileSync(
  join(root, 'node_modules/@fontsource-variable/open-sans/LICENSE'),
  join(out, 'LICENSE-open-sans.txt'),
);
