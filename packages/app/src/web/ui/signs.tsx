/** The sheet's own drawn marks: never set as text. */
export function ArcSign() {
  return (
    <svg className="arc-sign" viewBox="0 0 32 28" aria-hidden="true">
      <path d="M3 26h26" className="ground" />
      <path d="M6 24C8 2 18 0 22 15" className="jet" />
      <path d="M23.4 18.5l.6 1.6M25 23l.3 1.2" className="drops" />
    </svg>
  );
}

/** First-angle projection, as title blocks carry it. */
export function ProjectionSign() {
  return (
    <svg className="projection-sign" viewBox="0 0 52 20" width="52" height="20" aria-hidden="true">
      <path d="M2 6L22 3v14L2 14Z" />
      <path d="M0 10h25M27 10h25M40 0v20" className="axis" />
      <circle cx="40" cy="10" r="7" />
      <circle cx="40" cy="10" r="3.4" />
    </svg>
  );
}

/** A part that is pinned: head, shaft and the line it is driven into, with its word. */
export function PinSign() {
  return (
    <span className="pin-sign">
      <svg viewBox="0 0 10 14" width="10" height="14" aria-hidden="true">
        <path d="M2 1h6M5 1v10M1 11h8" />
      </svg>{' '}
      pinned
    </span>
  );
}
