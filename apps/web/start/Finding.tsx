/** How to learn what is inside the wall without harming it. Common practice of the trade, no source. */
export function Finding() {
  return (
    <details className="chapter guide">
      <summary>Finding studs and band without harm</summary>
      <ol>
        <li>
          Look first where nothing needs opening: the basement, the crawl space, the attic, an open closet. The joists’
          ends and the band show there.
        </li>
        <li>
          Inside, outlet boxes are fastened to a stud: tap beside one and listen, then measure on by 16 or 24 in. Stay
          clear of the wall above and below boxes and switches: wires run there.
        </li>
        <li>
          A strong magnet finds the drywall screws and nails along a stud. Mark three in a line before you believe it.
        </li>
        <li>
          Outside, nails in lap siding stand in rows over the studs. Do not cut siding or flashing to look; lift nothing
          you cannot put back dry.
        </li>
        <li>
          The band is level with the floor framing. Measure down from the sill of a door to the floor, then the floor’s
          thickness: the band lies behind that height, outside.
        </li>
        <li>
          Before any hole: switch off the circuit, and keep it under 1 1/4 in deep. Homes painted before 1978 may have
          lead paint: wet the spot and catch the dust.
        </li>
        <li>
          Brick, stone, cantilevered floors and foam under siding hold no cover. If you meet one, write it down: it
          decides how the roof is held.
        </li>
      </ol>
      <p className="quiet">
        What you saw, where and when goes beside “verified”. What nobody saw stays a question, and the set stays
        preliminary.
      </p>
    </details>
  );
}
