const MEASURES = [
  [4, 'the unit that distances count in'],
  [12, 'at the sides of a cell'],
  [24, 'least height of what is pressed with a mouse (WCAG 2.2, 2.5.8)'],
  [44, 'least height of what is pressed with a finger'],
  [84, 'least height in the yard, with wet hands'],
] as const;

/** Distances, and how the sheet folds. */
export function Room() {
  return (
    <section id="room" aria-labelledby="room-head">
      <h2 className="heading" id="room-head">
        Room
      </h2>
      <table className="design-table">
        <thead>
          <tr>
            <th scope="col">to scale</th>
            <th scope="col">px</th>
            <th scope="col">for</th>
          </tr>
        </thead>
        <tbody>
          {MEASURES.map(([px, use]) => (
            <tr key={px}>
              <td>
                <span className="measure" style={{ width: px }} />
              </td>
              <td>{px}</td>
              <td>{use}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="said">
        Areas share a ruled line, there are no gutters. Lists are dense; blank paper is left in the sky of the
        scene only. The sheet folds at 1000 and 680 px: beside each other on the desk, the pressure line
        upright beside the promises on a tablet, one after another on a phone with the title block as a bar at
        the foot. The order in the document is the same at every width. While something is dragged all figures
        move in the same frame; nothing fades, pulses or spins.
      </p>
    </section>
  );
}
