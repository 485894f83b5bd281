import type { ReactNode } from 'react';
import { SignedIn } from './signed-in.tsx';

/** Another sheet of the shop, or another section of this one. */
export interface Way {
  readonly name: string;
  readonly href: string;
}

/** The sheets of the shop; each is a page of its own. */
const SHEETS: readonly Way[] = [
  { name: 'Desk', href: './' },
  { name: 'Office', href: './office.html' },
  { name: 'Machines', href: './machines.html' },
  { name: 'Sums', href: './sums.html' },
];

/** A sheet with its frame, the ways to the other sheets, and the ways to its own sections. */
export function SheetFrame(given: {
  readonly here: string;
  readonly className: string;
  readonly sections: readonly Way[];
  /** The section shown. */
  readonly at: string | undefined;
  /** What can be done to the sheet as a whole. */
  readonly tools?: ReactNode;
  readonly children: ReactNode;
}) {
  const { here, className, sections, at, tools, children } = given;
  return (
    <div className={`sheet framed ${className}`}>
      <div className="frame">
        <nav className="index" aria-label="Sheets">
          <ul className="sheets">
            {SHEETS.map(({ name, href }) => (
              <li key={name}>
                <a href={href} aria-current={name === here ? 'page' : undefined}>
                  {name}
                </a>
              </li>
            ))}
          </ul>
          <span className="index-gap" />
          {tools}
          <SignedIn className="tool signed-in" />
        </nav>
        {sections.length > 0 && (
          <nav className="index sections" aria-label={`Sections of ${here}`}>
            <ul className="sheets">
              {sections.map(({ name, href }) => (
                <li key={name}>
                  <a href={href} aria-current={name === at ? 'true' : undefined}>
                    {name}
                  </a>
                </li>
              ))}
            </ul>
          </nav>
        )}
        <main className="section">{children}</main>
      </div>
    </div>
  );
}
