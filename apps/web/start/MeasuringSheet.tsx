/** A sheet to print and carry: every measure the questions will ask, with room to write. */
const ROWS: readonly (readonly [string, readonly string[]])[] = [
  [
    'House wall (stand inside, look out, left to right)',
    [
      'Length of the patio wall',
      'Floor to underside of the eave',
      'Floor down to the slab',
      'Floor down to the ground',
      'Slab: length out, width, thickness',
      'Slab falls … in over … ft',
      'Stud spacing found',
      'Siding, its thickness',
    ],
  ],
  [
    'Openings (from the left end to the near edge)',
    [
      'Door: offset, width, head',
      'Window 1: offset, width, sill, head',
      'Window 2: offset, width, sill, head',
      'Rooms behind; bedroom windows marked E',
    ],
  ],
  [
    'House roof',
    ['Rise in 12 in', 'Overhang at the eave', 'Overhang at the gable', 'Ridge runs along the wall, or out'],
  ],
  [
    'Lot',
    [
      'Patio wall to the rear line',
      'Left end to the left line',
      'Right end to the right line',
      'Easements on the plat',
      'Meters, septic, well, wires, trees: where',
    ],
  ],
  [
    'Ask the office',
    [
      'Setbacks rear, left, right; to post or eave',
      'Coverage limit, of lot or rear yard',
      'Height limit',
      'Wind speed, exposure',
      'Ground snow',
      'Seismic category',
      'Frost depth',
      'Soil bearing, lateral',
      'Patio-cover appendix adopted?',
      'Truss papers later?',
      'Sheet sizes, copies, fee',
    ],
  ],
];

export function MeasuringSheet() {
  return (
    <details className="chapter guide">
      <summary>A measuring sheet to carry</summary>
      <p className="quiet">Measure twice, once by someone else. Write what the tape says, not what it should be.</p>
      <button type="button" onClick={() => window.print()}>
        Print the measuring sheet
      </button>
      <div className="measuring">
        <h2>Measuring sheet</h2>
        <p>Address ______________________________ Date ____________ Measured by ____________________</p>
        {ROWS.map(([title, rows]) => (
          <section key={title}>
            <h3>{title}</h3>
            <dl>
              {rows.map((r) => (
                <div key={r}>
                  <dt>{r}</dt>
                  <dd />
                </div>
              ))}
            </dl>
          </section>
        ))}
        <p>
          Never dig before the utility locating service has marked the ground. Keep ladders away from overhead wires.
        </p>
      </div>
    </details>
  );
}
