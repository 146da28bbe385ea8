/** The parts of a starter that every roof shares: an invented lot and house, and questions for the office. */

export interface StarterOptions {
  readonly title?: string;
  readonly address?: string;
  readonly owner?: string;
  /** Title block date, `2026-03-02`; the program has no clock. */
  readonly date?: string;
}

const quote = (s: string): string => JSON.stringify(s);

export const job = (o: StarterOptions, title: string, scope: string): string => `  "job": {
    // Printed in the title block of every sheet.
    "title": ${quote(o.title ?? title)},
    "address": ${quote(o.address ?? '27 Quillback Road, Lower Fernside')},
    "owner": ${quote(o.owner ?? 'Your name, as on the deed')},
    // Parcel number: on the property tax bill.
    "parcel": "000-000-00",
    "preparedBy": "the owner",
    // Year-month-day, as you want it on the sheets.
    "date": ${quote(o.date ?? '2026-01-01')},
    // "us" or "metric": what the sheets print. Lengths in this file may be written either way: "12 ft 6 in", "3.81 m".
    "units": "us",
    // "ARCH D" is 24 x 36 inches. Ask the office which sizes it takes.
    "sheetSize": "ARCH D",
    "scope": ${quote(scope)}
  }`;

export const basis = `  // What the building and zoning offices require. Every "unknown" becomes a question on the cover sheet, and the set stays
  // PRELIMINARY until it is answered. Put an answer in as  { "value": "105 mph", "from": "county design criteria sheet" }.
  "basis": {
    // Code year the office enforces: "2018" or "2021". Building counter.
    "codes": "2018",
    // A house and its patio cover are risk category II.
    "riskCategory": "II",
    // Building office: its sheet of design criteria lists wind, snow, seismic and frost.
    "wind": {
      "speed": "unknown",
      // "B" among houses and trees, "C" open country, "D" along open water.
      "exposure": "unknown",
      // 1.0 unless the house is on or beside a hill, ridge or bluff.
      "topographic": "unknown",
      // Height above the sea, from any map.
      "elevation": "0 ft",
      // "both" designs for wind that can and cannot pass below the roof.
      "flow": "both"
    },
    "snow": {
      // Ground snow load; "0 psf" where there is none.
      "ground": "unknown",
      // "fully" swept by wind, "partially", or "sheltered".
      "exposure": "unknown"
    },
    "roofLive": {
      // Mostly "20 psf".
      "minimum": "unknown",
      // true when the patio-cover appendix of the residential code is adopted here by name.
      "patioAppendix": "unknown",
      // false keeps the load unreduced, which is on the safe side.
      "reduce": false
    },
    "seismic": { "category": "unknown" },
    "frost": "unknown",
    "soil": {
      // Without a soils report the office has a value it accepts, often "1500 psf" and "100 psf/ft". With a source you may
      // add "friction" (or "cohesion") against sliding and "skinFriction" against uplift; left out, none is counted.
      "bearing": "unknown",
      "lateral": "unknown",
      "density": "100 pcf",
      "description": "not tested"
    },
    // Zoning or planning counter.
    "zoning": {
      "coverageLimit": "unknown",
      // "lot" or "rear-yard": what the limit is a share of.
      "coverageOf": "lot",
      "setbacks": { "front": "unknown", "rear": "unknown", "left": "unknown", "right": "unknown" },
      // Whether setbacks are measured to the "post" or to the "eave".
      "referenceEdge": "unknown",
      "heightLimit": "unknown",
      "headroom": "6 ft 8 in"
    },
    // Printed on the cover as given.
    "criteria": [
      { "label": "Termite", "value": "unknown" },
      { "label": "Weathering", "value": "unknown" }
    ]
  }`;

export const lot = `  // The boundary as the plat or survey states it. Walk round the lot from any corner; write each line as you go along it.
  "lot": {
    "courses": [
      { "bearing": "N 90°00'00\\" E", "distance": "100.00 ft", "yard": "front", "name": "south line" },
      { "bearing": "N 00°00'00\\" E", "distance": "150.00 ft", "yard": "right", "name": "east line" },
      { "bearing": "N 90°00'00\\" W", "distance": "100.00 ft", "yard": "rear", "name": "north line" },
      { "bearing": "S 00°00'00\\" W", "distance": "150.00 ft", "yard": "left", "name": "west line" }
    ],
    // Courses are counted from 0.
    "street": { "name": "Quillback Road", "course": 0 },
    // The house origin: a point on the patio wall, x = 0 and y = 0 of everything below. Scale it from the survey.
    "origin": { "east": "50 ft", "north": "75 ft" },
    // Straight out from the patio wall.
    "outward": "N 00°00'00\\" E",
    // From the plat or title report:  { "name": "utility easement", "course": 2, "width": "7 ft 6 in" }
    "easements": [],
    // Sheds and garages:  { "name": "shed", "outline": [["26 ft", "38 ft"], …], "counts": true }
    "buildings": [],
    // Wells, septic tanks, meters, service drops, trees:  { "kind": "meter", "at": ["22 ft", "-8 ft"], "label": "meter" }
    "items": [],
    "paving": [{ "name": "driveway", "outline": [["-22 ft", "-75 ft"], ["-4 ft", "-75 ft"], ["-4 ft", "-30 ft"], ["-22 ft", "-30 ft"]] }]
  }`;

interface HouseShape {
  readonly stories: 1 | 2;
  readonly plate: string;
  readonly ridge: 'x' | 'y';
  readonly note: string;
}

/** A plain rectangle, its patio wall along y = 0 and a door in the middle of it. */
export const house = ({
  stories,
  plate,
  ridge,
  note,
}: HouseShape): string => `  // The house, measured. x runs along the patio wall from left to right as you stand inside and look out, y runs out from
  // the wall, heights count from the finished floor.
  "house": {
    "stories": ${stories},
    "builds": {
      "lap": {
        "studs": "2x6", "spacing": "16 in", "cladding": "lap-siding", "claddingThickness": "5/8 in", "sheathing": "7/16 in panel",
        // true once the framing behind the siding was seen; say where.
        "verified": "unknown"
      }
    },
    // Corners clockwise as seen from above; each wall runs to the start of the next.
    "walls": [
      { "name": "rear", "start": ["-22 ft", "0 ft"], "plate": "${plate}", "build": "lap" },
      { "name": "right", "start": ["22 ft", "0 ft"], "plate": "${plate}", "build": "lap" },
      { "name": "front", "start": ["22 ft", "-30 ft"], "plate": "${plate}", "build": "lap" },
      { "name": "left", "start": ["-22 ft", "-30 ft"], "plate": "${plate}", "build": "lap" }
    ],
    // "offset" is from the left end of the wall, as seen from inside, to the near edge of the opening. "escape" marks the
    // emergency escape window every bedroom has.
    "openings": [
      { "mark": "D1", "kind": "sliding-door", "wall": "rear", "offset": "19 ft", "width": "6 ft", "sill": "0 in", "head": "6 ft 8 in", "room": "living room", "escape": false },
      { "mark": "W1", "kind": "window", "wall": "rear", "offset": "6 ft", "width": "4 ft", "sill": "3 ft", "head": "6 ft 8 in", "room": "bedroom", "escape": true },
      { "mark": "D2", "kind": "door", "wall": "front", "offset": "20 ft", "width": "3 ft", "sill": "0 in", "head": "6 ft 8 in", "room": "hall", "escape": false }
    ],
    // ${note}
    "roofs": [
      { "kind": "gable", "min": ["-22 ft", "-30 ft"], "max": ["22 ft", "0 ft"], "ridge": "${ridge}", "pitch": "5/12", "plate": "${plate}", "overhang": "12 in", "rake": "6 in", "covering": "asphalt-shingle" }
    ]
  }`;
