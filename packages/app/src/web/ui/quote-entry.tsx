import { useDesk } from './desk-context.ts';
import '../style/quote-entry.css';

/** The way from the job on the desk to a quote of it that the records keep. */
export function QuoteEntry() {
  const job = useDesk((s) => s.current);
  if (job === undefined) return null;
  return (
    <p className="quote-entry">
      <a href={`./office.html#quotes/new/${encodeURIComponent(job)}`}>Make a quote from this job</a>
    </p>
  );
}
