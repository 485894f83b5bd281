/** One thing for each name, made when the name is first asked for, so that every part of a page has the same. */
export function oneEach<T>(make: (name: string) => T): (name: string) => T {
  const made = new Map<string, T>();
  return (name) => {
    const known = made.get(name);
    if (known !== undefined) return known;
    const fresh = make(name);
    made.set(name, fresh);
    return fresh;
  };
}
