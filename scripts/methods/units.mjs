// The units a doc comment may use: these, and their products and quotients.
const ATOMS = new Set('- m mm s h kg g N Pa rad W J K degC A V Ah ohm mol L min 1 % gpm'.split(' '));
/** The consistency of a power-law liquid: its unit depends on the liquid. */
const SPECIAL = new Set(['Pa.s^n']);

export function isKnownUnit(unit) {
  if (ATOMS.has(unit) || SPECIAL.has(unit)) return true;
  const flat = unit.replace(/[()]/g, '');
  if ((unit.match(/\(/g) ?? []).length !== (unit.match(/\)/g) ?? []).length) return false;
  return flat.split(/[./]/).every((factor) => {
    const found = /^([A-Za-z%]+|1)([2-4])?$/.exec(factor);
    return found !== null && ATOMS.has(found[1]) && found[1] !== '-';
  });
}
