import type { UnitSystem } from '@spraywright/engine/quantity';

interface Paper {
  /** As the records serve it: "handbook.pdf". */
  readonly file: string;
  readonly words: string;
}

/** What can be printed or kept of one machine, as the records write it. */
export function MachinePapers(given: {
  readonly serial: string;
  readonly units: UnitSystem;
  readonly papers: readonly Paper[];
}) {
  const { serial, units, papers } = given;
  return (
    <p className="machine-papers">
      Papers:{' '}
      {papers.map(({ file, words }, i) => {
        const dot = file.lastIndexOf('.');
        return (
          <span key={file}>
            {i > 0 && ', '}
            <a
              href={`api/machines/${encodeURIComponent(serial)}/${file}?units=${units}`}
              download={`${file.slice(0, dot)}-${serial}${file.slice(dot)}`}
            >
              {words}
            </a>
          </span>
        );
      })}
    </p>
  );
}
