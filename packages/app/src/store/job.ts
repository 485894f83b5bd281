/** What the desk works on, as JSON: kept as it stands, also while a field of it cannot be read. */
export interface JobDocument {
  /** The rig with the brief it answers. */
  readonly rig: Readonly<Record<string, unknown>>;
  /** What the shop writes down for itself. */
  readonly notes: string;
}

/** A job as lists show it. */
export interface JobHead {
  readonly id: string;
  readonly version: number;
  readonly title: string;
  readonly customer: string;
  readonly madeAt: string;
  readonly changedAt: string;
  readonly changedBy: string;
}

export interface Job extends JobHead {
  readonly document: JobDocument;
}

/** Who does something, and when: a name as typed and a moment as ISO text in UTC. */
export interface Doing {
  readonly by: string;
  readonly at: string;
}

/** What lists and searches need, read from a document that may be unreadable in places. */
export function headOf(
  id: string,
  { rig }: JobDocument,
): { title: string; customer: string; found_by: string } {
  const brief = rig.brief as { customer?: unknown } | undefined;
  const text = (value: unknown) => (typeof value === 'string' ? value.slice(0, 200) : '');
  const title = text(rig.title);
  const customer = text(brief?.customer);
  return { title, customer, found_by: `${title} ${customer} ${id}`.toLowerCase() };
}
