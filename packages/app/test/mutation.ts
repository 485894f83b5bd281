/** Seeded spoiling of JSON documents: what a careless hand, a broken program or an attacker could send. */
export function randomOf(seed: number): () => number {
  let state = seed >>> 0 || 1;
  return () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 4294967296;
  };
}

const BAD_VALUES: readonly unknown[] = [
  null,
  '',
  'twelve',
  '-3 ft',
  '1e308 gpm',
  '1e-300 psi',
  'NaN psi',
  'Infinity ft',
  '0 in',
  '5 furlongs',
  '70 F',
  '12 gpm',
  '300 psi',
  '100 ft',
  '0 gpm',
  '999999999 gal',
  -1,
  0,
  1e9,
  1e308,
  -1e308,
  Number.MAX_SAFE_INTEGER,
  true,
  false,
  [],
  {},
  'no-such-part',
  'tank',
  'air',
  'manifold',
  'gun',
  '__proto__',
  'constructor',
  'a'.repeat(500),
];

/** A copy of the document with a few random changes: a field removed, doubled, or given a bad or a foreign value. */
export function spoil(document: unknown, random: () => number): unknown {
  const copy = structuredClone(document);
  const places: { holder: Record<string, unknown> | unknown[]; key: string | number }[] = [];
  const collect = (value: unknown) => {
    if (Array.isArray(value)) {
      value.forEach((member, i) => {
        places.push({ holder: value, key: i });
        collect(member);
      });
    } else if (typeof value === 'object' && value !== null) {
      for (const key of Object.keys(value)) {
        places.push({ holder: value as Record<string, unknown>, key });
        collect((value as Record<string, unknown>)[key]);
      }
    }
  };
  collect(copy);
  const changes = 1 + Math.floor(random() * 3);
  for (let i = 0; i < changes; i++) {
    const place = places[Math.floor(random() * places.length)];
    if (place === undefined) return BAD_VALUES[Math.floor(random() * BAD_VALUES.length)];
    const holder = place.holder as Record<string | number, unknown>;
    const roll = random();
    if (roll < 0.2) {
      if (Array.isArray(place.holder)) place.holder.splice(place.key as number, 1);
      else delete holder[place.key];
    } else if (roll < 0.3 && Array.isArray(place.holder))
      place.holder.push(structuredClone(holder[place.key]));
    else if (roll < 0.45) {
      const other = places[Math.floor(random() * places.length)]!;
      holder[place.key] = structuredClone((other.holder as Record<string | number, unknown>)[other.key]);
    } else holder[place.key] = BAD_VALUES[Math.floor(random() * BAD_VALUES.length)];
  }
  return copy;
}

/** Path of the first number that is NaN or infinite inside a value; undefined when there is none. */
export function firstBadNumber(value: unknown, path = ''): string | undefined {
  if (typeof value === 'number') return Number.isFinite(value) ? undefined : path;
  if (value instanceof Map) return firstBadNumber([...value.entries()], path);
  if (Array.isArray(value)) {
    for (let i = 0; i < value.length; i++) {
      const bad = firstBadNumber(value[i], `${path}[${i}]`);
      if (bad !== undefined) return bad;
    }
  } else if (typeof value === 'object' && value !== null) {
    for (const [key, member] of Object.entries(value)) {
      const bad = firstBadNumber(member, `${path}.${key}`);
      if (bad !== undefined) return bad;
    }
  }
  return undefined;
}
